import Fraction from 'fraction.js';
import { type Exact, nothing, total } from './exactMoney.ts';
import type { Estate } from './lots.ts';

/** What the first of two heirs gets of each lot, as a share from 0 to 1; the second gets the rest. */
export type AdjustedWinner = {
  firstShare: Exact[];
  /** Lots on which both set the same points. */
  ties: number[];
  /** The points each has once every lot has gone to whom it is worth more, ties among them. */
  tentative: [Exact, Exact];
  /** The lot that had to be split, with the share of it that was given up. */
  split?: { lot: number; givenUp: Exact };
};

const whole = new Fraction(1);

/**
 * How do two heirs divide so that both have the same by their own points, at most one lot being split?
 *
 * Method: each lot goes to the heir who set more points on it; equal ones to whoever has fewer then, the first where both have the same.
 * Lots then pass from the heir with more, in rising order of the giver's points over the taker's, the last of them in part, until both
 * have the same.
 *
 * @param estate  two heirs who spread the same number of points
 * @throws RangeError for another number of heirs
 * @source Brams and Taylor, Fair Division (1996), from memory; held against published examples
 */
export function adjustedWinner({ heirs, lots, values }: Estate): AdjustedWinner {
  const [first, second] = values;
  if (heirs.length !== 2 || first === undefined || second === undefined)
    throw new RangeError(`adjustedWinner needs two heirs, got ${heirs.length}`);
  const points = (heir: 0 | 1, lot: number) => (heir === 0 ? first : second)[lot] as Exact;
  const all = lots.map((_, lot) => lot);
  const ties = all.filter((lot) => points(0, lot).equals(points(1, lot)));
  const firstShare = all.map((lot) => (points(0, lot).gt(points(1, lot)) ? whole : nothing));
  const had = (heir: 0 | 1) =>
    total(
      all.map((lot) => {
        const share = firstShare[lot] as Exact;
        return points(heir, lot).mul(heir === 0 ? share : whole.sub(share));
      }),
    );
  const given = new Set(all.filter((lot) => !ties.includes(lot)));
  const secondSoFar = () =>
    total([...given].map((lot) => points(1, lot).mul(whole.sub(firstShare[lot] as Exact))));
  for (const lot of ties) {
    if (had(0).lte(secondSoFar())) firstShare[lot] = whole;
    given.add(lot);
  }
  const tentative: [Exact, Exact] = [had(0), had(1)];
  const giver = had(0).gte(had(1)) ? 0 : 1;
  const taker = giver === 0 ? 1 : 0;
  const holds = (lot: number) => (firstShare[lot] as Exact).equals(giver === 0 ? 1 : 0);
  // Compared crosswise, so that a lot the taker sets nothing on comes last and nothing is divided by it.
  const rising = all.filter(holds).toSorted((a, b) =>
    points(giver, a)
      .mul(points(taker, b))
      .compare(points(giver, b).mul(points(taker, a))),
  );
  let split: AdjustedWinner['split'];
  for (const lot of rising) {
    const ahead = had(giver).sub(had(taker));
    const both = points(giver, lot).add(points(taker, lot));
    if (ahead.lte(0) || both.equals(0)) break;
    const givenUp = ahead.gte(both) ? whole : ahead.div(both);
    firstShare[lot] = giver === 0 ? whole.sub(givenUp) : givenUp;
    if (!givenUp.equals(whole)) split = { lot, givenUp };
  }
  return { firstShare, ties, tentative, ...(split === undefined ? {} : { split }) };
}
