import type { NeedOn } from '../../knowledge/needOn.ts';
import type { Sign } from '../../knowledge/schema.ts';
import { lookPlan, type NextLook, withinLimits } from '../../weighing/lookPlan.ts';

export type Need = Sign['needs'];

/** What the examiner has leave and time for on this visit, and the alteration that is being tested. */
export type Visit = { minutes: number | undefined; mayNot: readonly Need[]; suspected?: string | undefined };

/** How a need is said before the step. */
const needWords: Record<NeedOn, string> = {
  nothing: 'Nothing need be moved',
  'pulled-out': 'Pull it out',
  opened: 'Open it',
  'from-behind': 'Look from behind',
  'turned-over': 'Turn it over',
  'seat-lifted': 'Lift the seat: ask leave first',
  'part-removed': 'Take it out or off: ask first',
  'owners-leave': 'Ask the owner’s leave first',
  laboratory: 'A laboratory’s work: ask leave first',
};

/** What a look asks for where nobody has the piece in the hand. */
export const inPhotos = 'Where a photo shows it';

/** How a need of a look is said; a need not known here is printed as it stands. */
export function sayNeed(needs: string): string {
  return Object.hasOwn(needWords, needs) ? needWords[needs as NeedOn] : needs;
}

/** Minutes as they are said: `2 min`, `3½ min`. */
export function sayMinutes(minutes: number): string {
  const whole = Math.floor(minutes);
  if (minutes - whole !== 0.5) return `${Math.round(minutes * 10) / 10} min`;
  return `${whole === 0 ? '' : whole}½ min`;
}

/** The looks that fit into this visit, in the order worth taking, each with the minutes gone by when it is done. */
export function planLooks(
  looks: readonly NextLook[],
  { minutes, mayNot }: Visit,
): { look: NextLook; minutesGone: number }[] {
  return lookPlan(withinLimits(looks, { mayNot: [...mayNot] }), minutes ?? Number.POSITIVE_INFINITY);
}
