import { seededRandom } from '../src/evidence/betaDraws.ts';
import type { CaseToWeigh } from '../src/evidence/weighing.ts';
import type { Knowledge } from '../src/knowledge/schema.ts';

/** An armchair with so many findings on all its parts, drawn with a seed from the signs it can show. */
export function caseOf(knowledge: Knowledge, findingCount: number, seed: number): CaseToWeigh {
  const form = knowledge.forms.armchair;
  if (form === undefined) throw new Error('the knowledge has no armchair');
  const random = seededRandom(seed);
  const parts = form.parts.filter((part) =>
    Object.entries(part.when).every(([feature, options]) =>
      options.includes(form.features.find((each) => each.id === feature)?.options[0]?.id ?? ''),
    ),
  );
  const places = Object.values(knowledge.signs).flatMap((sign) => [
    ...(sign.on.includes('whole') ? [{ sign: sign.id }] : []),
    ...parts.filter((part) => sign.on.includes(part.kind)).map((part) => ({ sign: sign.id, part: part.id })),
  ]);
  const findings: CaseToWeigh['findings'] = [];
  while (findings.length < findingCount && places.length > 0) {
    const [place] = places.splice(Math.floor(random() * places.length), 1);
    if (place !== undefined)
      findings.push({
        ...place,
        state: random() < 0.4 ? 'present' : 'absent',
        sure: random() < 0.7 ? 'plain' : 'fairly',
      });
  }
  return {
    form: 'armchair',
    mode: 'in-hand',
    claim: { period: [1755, 1795], place: 'Philadelphia' },
    findings,
  };
}
