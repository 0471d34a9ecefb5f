import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import type { Weighing } from './weighing.ts';

/** What there is time and leave for. */
export type Limits = NonNullable<CaseToWeigh['limits']>;
export type NextLook = Weighing['nextLooks'][number];

/** The next looks that the limits leave open: those that ask for nothing that may not be done and fit into the minutes. */
export function withinLimits(looks: readonly NextLook[], limits: Limits | undefined): NextLook[] {
  const { minutesLeft = Number.POSITIVE_INFINITY, mayNot = [] } = limits ?? {};
  return looks.filter((look) => look.minutes <= minutesLeft && !mayNot.some((need) => need === look.needs));
}

/** Whether a look is expected to tell at all: a thousandth of a bit or more. */
export function isTelling(look: Pick<NextLook, 'bits'>): boolean {
  return look.bits >= 0.001;
}

/**
 * What to look at, in order, within the minutes left.
 *
 * Method: greedy. The look with most bits to the minute comes first, then the next that still fits; a sign is named once, on
 * the part where it tells most to the minute, since once it was looked for it tells less elsewhere. This is not always the
 * best that fits, and the bits are those of each look by itself: together they bring less.
 *
 * @param looks        as `withinLimits` gives them
 * @param minutesLeft  Infinity where nobody is in a hurry
 * @returns the looks that tell, with the minutes gone by when each is done
 * @source ours: the greedy rule for the knapsack problem, common practice
 */
export function lookPlan(
  looks: readonly NextLook[],
  minutesLeft: number,
): { look: NextLook; minutesGone: number }[] {
  const plan: { look: NextLook; minutesGone: number }[] = [];
  const named = new Set<string>();
  let gone = 0;
  for (const look of looks.toSorted((a, b) => b.bits / b.minutes - a.bits / a.minutes)) {
    if (!isTelling(look) || named.has(look.sign) || gone + look.minutes > minutesLeft) continue;
    gone += look.minutes;
    named.add(look.sign);
    plan.push({ look, minutesGone: gone });
  }
  return plan;
}
