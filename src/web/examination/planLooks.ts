import type { Weighing } from '../../evidence/weighing.ts';
import { type NeedOn, needOn } from '../../knowledge/needOn.ts';
import type { Form, FormPart, Sign } from '../../knowledge/schema.ts';

export type NextLook = Weighing['nextLooks'][number];
export type Need = Sign['needs'];

/** What the examiner has leave and time for on this visit. */
export type Visit = { minutes: number | undefined; mayNot: readonly Need[] };

/** Needs that ask for the owner's leave before a hand is laid on. */
const askLeave: readonly Need[] = ['seat-lifted', 'part-removed', 'owners-leave', 'laboratory'];

/** How a need is said before the step. */
export const needWords: Record<NeedOn, string> = {
  nothing: 'Nothing need be moved',
  'pulled-out': 'Pull it out',
  opened: 'Open it',
  'from-behind': 'Look from behind',
  'turned-over': 'Turn it over',
  'seat-lifted': 'Lift the seat: ask leave first',
  'part-removed': 'Take it out or off: ask leave first',
  'owners-leave': 'Ask the owner’s leave first',
  laboratory: 'A laboratory’s work: ask leave first',
};

/** What a look asks for where nobody has the piece in the hand. */
export const inPhotos = 'Where a photo shows it';

/** Whether a look needs the owner's leave. */
export function needsLeave(needs: string): boolean {
  return askLeave.some((need) => need === needs);
}

/** How a need of a look is said; a need not known here is printed as it stands. */
export function sayNeed(needs: string): string {
  return Object.hasOwn(needWords, needs) ? needWords[needs as NeedOn] : needs;
}

/** The looks with what each asks for on its own part: a drawer is pulled out where the piece would be turned over. */
export function looksOnParts(
  looks: readonly NextLook[],
  parts: readonly FormPart[],
  form: Pick<Form, 'family'> | undefined,
): NextLook[] {
  const kinds = new Map(parts.map((part) => [part.id, part.kind]));
  return looks.map((look) => ({
    ...look,
    needs: needOn(look.needs as Need, look.part === null ? undefined : kinds.get(look.part), form),
  }));
}

/** Minutes as they are said: `2 min`, `3½ min`. */
export function sayMinutes(minutes: number): string {
  const whole = Math.floor(minutes);
  if (minutes - whole !== 0.5) return `${Math.round(minutes * 10) / 10} min`;
  return `${whole === 0 ? '' : whole}½ min`;
}

/** Whether a look is expected to tell at all: a thousandth of a bit or more. */
export function isTelling(look: Pick<NextLook, 'bits'>): boolean {
  return look.bits >= 0.001;
}

/**
 * The looks that fit into this visit, the most telling for their minutes first, each with the minutes
 * gone by when it is done. What does not fit is passed over for what does.
 *
 * Looks that tell nothing are left out; a sign is named on the part where it tells most, since once it was looked for
 * there it tells less elsewhere.
 */
export function planLooks(
  looks: readonly NextLook[],
  visit: Visit,
): { look: NextLook; minutesGone: number }[] {
  const allowed = looks
    .filter((look) => isTelling(look) && !visit.mayNot.some((need) => need === look.needs))
    .toSorted((a, b) => b.bits / b.minutes - a.bits / a.minutes);
  const plan: { look: NextLook; minutesGone: number }[] = [];
  let gone = 0;
  for (const look of allowed) {
    if (plan.some((one) => one.look.sign === look.sign)) continue;
    if (visit.minutes !== undefined && gone + look.minutes > visit.minutes) continue;
    gone += look.minutes;
    plan.push({ look, minutesGone: gone });
  }
  return plan;
}
