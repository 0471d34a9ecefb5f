import type { CaseToWeigh, Weighing } from './weighing.ts';

/** What there is time and leave for. */
export type Limits = NonNullable<CaseToWeigh['limits']>;

/** The next looks that the limits leave open: those that ask for nothing that may not be done and fit into the minutes. */
export function withinLimits(
  looks: Weighing['nextLooks'],
  limits: Limits | undefined,
): Weighing['nextLooks'] {
  const { minutesLeft = Number.POSITIVE_INFINITY, mayNot = [] } = limits ?? {};
  return looks.filter((look) => look.minutes <= minutesLeft && !mayNot.some((need) => need === look.needs));
}

/**
 * What to look at, in order, within the minutes left.
 *
 * Method: greedy. The look with most bits to the minute comes first, then the next that still fits; a sign is named once, on
 * the part where it tells most to the minute, since once it was looked for it tells less elsewhere. This is not always the
 * best that fits, and the bits are those of each look by itself: together they bring less.
 *
 * @param looks  as `withinLimits` gives them
 * @returns the looks with the minutes gone by when each is done; those that tell less than a thousandth of a bit are left out
 * @source ours: the greedy rule for the knapsack problem, common practice
 */
export function lookPlan(looks: Weighing['nextLooks'], minutesLeft: number): NonNullable<Weighing['plan']> {
  const plan: NonNullable<Weighing['plan']> = [];
  const named = new Set<string>();
  let gone = 0;
  for (const { sign, part, bits, minutes } of looks.toSorted(
    (a, b) => b.bits / b.minutes - a.bits / a.minutes,
  )) {
    if (bits < 0.001 || named.has(sign) || gone + minutes > minutesLeft) continue;
    gone += minutes;
    named.add(sign);
    plan.push({ sign, part, bits, minutesGone: gone });
  }
  return plan;
}
