import { climbedShare, isBetter, type Rows, risingShares } from './climbedShare.ts';
import type { Exact } from './exactMoney.ts';
import type { Estate } from './lots.ts';
import { type Maximin, maximinProgram } from './maximinProgram.ts';

/** Allocations that are begun before the program takes over: about a second’s work. No clock is read. */
const mostBegun = 4_000_000;

/**
 * How is a whole estate shared so that the heir who gets least, by their own values, gets as much as can be, then the next, and so on?
 *
 * Method: every allocation is gone through in whole numbers, but for those that can't lift the least share any more. Where they are too
 * many, an integer program goes on, and of the two answers the better is given. No lot is split and no money passes.
 *
 * @source the leximin order (Sen, 1970; Moulin, 1988), from memory; held against every allocation of small estates, written plainly
 */
export function maximin(estate: Estate, most = mostBegun): Maximin {
  const whole = wholeNumbers(estate.values);
  const found = whole === undefined ? undefined : goneThrough(whole, estate.lots.length, most);
  if (found?.proved) return found;
  const program = maximinProgram(estate);
  if (program.proved || found === undefined || whole === undefined) return program;
  const rising = ({ holder }: Maximin) => risingShares(whole, holder);
  return isBetter(rising(found), rising(program)) ? found : program;
}

/** The values brought to whole numbers by one factor; undefined where they grow too large to be added up exactly. */
function wholeNumbers(values: readonly (readonly Exact[])[]): number[][] | undefined {
  const factor = values.flat().reduce((all, value) => lcm(all, value.d), 1n);
  const rows = values.map((row) => row.map((value) => value.mul(factor).valueOf()));
  const largest = Math.max(...rows.map((row) => row.reduce((sum, each) => sum + each, 0)));
  return largest <= Number.MAX_SAFE_INTEGER ? rows : undefined;
}

/** The best allocation by going through them, lots that matter most first. */
function goneThrough(values: Rows, lots: number, most: number): Maximin {
  const order = Array.from({ length: lots }, (_, lot) => lot).toSorted(
    (a, b) =>
      Math.max(...values.map((row) => row[b] as number)) - Math.max(...values.map((row) => row[a] as number)),
  );
  // What is still to be given from each place of the order on, as each heir values it.
  const rest = values.map((row) => {
    const sums = new Float64Array(lots + 1);
    for (let at = lots - 1; at >= 0; at--)
      sums[at] = (sums[at + 1] as number) + (row[order[at] as number] as number);
    return sums;
  });
  const had = values.map(() => 0);
  const holder = order.map(() => 0);
  const start = climbedShare(values, order);
  let best = { holder: start, rising: risingShares(values, start) };
  let begun = 0;
  const give = (at: number): void => {
    begun += 1;
    if (begun > most) return;
    const least = best.rising[0] as number;
    if (had.some((value, heir) => value + ((rest[heir] as Float64Array)[at] as number) < least)) return;
    if (at === lots) {
      const rising = had.toSorted((a, b) => a - b);
      if (isBetter(rising, best.rising)) best = { holder: [...holder], rising };
      return;
    }
    const lot = order[at] as number;
    for (let heir = 0; heir < values.length; heir++) {
      const value = (values[heir] as readonly number[])[lot] as number;
      had[heir] = (had[heir] as number) + value;
      holder[lot] = heir;
      give(at + 1);
      had[heir] = (had[heir] as number) - value;
    }
  };
  give(0);
  return { holder: best.holder, proved: begun <= most };
}

function lcm(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return (a / x) * b;
}
