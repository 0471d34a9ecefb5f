import { capital } from '../ground/words.ts';
import type { Damage, DamageKind, DamageOrigin } from './condition.ts';

export const damageKindWords: Record<DamageKind, string> = {
  physical: 'the body of it',
  surface: 'the surface',
  potential: 'nothing yet, but to be expected from how it is made',
};

export const damageOriginWords: Record<DamageOrigin, string> = {
  unknown: 'not known',
  original: 'use and age',
  'old-repair': 'an old repair',
  recent: 'recent handling or accident',
};

/** A damage in a line: what, on which part, how great. */
export function damageLine({ term, degree, where }: Damage, partName: string | undefined): string {
  const what = term.trim() === '' ? 'not yet described' : term.trim();
  return [`${capital(partName ?? 'the piece')}: ${what}`, where.trim(), degree ?? '']
    .filter((each) => each !== '')
    .join(', ');
}
