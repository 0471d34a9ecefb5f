import Fraction from 'fraction.js';
import { type Exact, nothing, total } from './exactMoney.ts';
import type { Estate } from './lots.ts';

/** A division: which share of each lot each heir has, and what each receives in money. */
export type Divided = {
  /** `share[heir][lot]`, 0 to 1; the shares of a lot add up to 1. */
  share: readonly (readonly Exact[])[];
  payments: readonly Exact[];
};

/** Every lot whole to one heir. */
export function wholeLots(estate: Estate, holder: readonly number[]): Exact[][] {
  return estate.heirs.map((_, heir) => holder.map((each) => new Fraction(each === heir ? 1 : 0)));
}

/** What each heir thinks each heir’s share to be worth, money taken in: `worth[heir][other]`. */
export function worthToEach({ values }: Estate, { share, payments }: Divided): Exact[][] {
  return values.map((row) =>
    share.map((held, other) =>
      total(row.map((value, lot) => value.mul(held[lot] as Exact))).add(payments[other] as Exact),
    ),
  );
}

/** Who would rather have another’s share, and by how much in their own eyes. */
export function envyIn(worth: readonly (readonly Exact[])[]): { heir: number; of: number; by: Exact }[] {
  return worth.flatMap((row, heir) =>
    row.flatMap((value, of) => {
      const by = value.sub(row[heir] as Exact);
      return by.gt(0) ? [{ heir, of, by }] : [];
    }),
  );
}

/** Whether each heir has, in their own eyes, an equal part of the whole or more. */
export function isProportional({ heirs, values }: Estate, worth: readonly (readonly Exact[])[]): boolean {
  return values.every((row, heir) => cell(worth, heir, heir).gte(total(row).div(heirs.length)));
}

/** Whether all gain alike over an equal part of their own total. */
export function hasEqualGain({ heirs, values }: Estate, worth: readonly (readonly Exact[])[]): boolean {
  const gains = values.map((row, heir) => cell(worth, heir, heir).sub(total(row).div(heirs.length)));
  return gains.every((gain) => gain.equals(gains[0] as Exact));
}

/** Whether every envy would be gone without some one lot of the share that is envied. */
export function isEnvyFreeUpToOne(estate: Estate, divided: Divided): boolean {
  const worth = worthToEach(estate, divided);
  return envyIn(worth).every(({ heir, of, by }) => {
    const row = estate.values[heir] as readonly Exact[];
    const most = row.reduce((best, value, lot) => {
      const held = value.mul(cell(divided.share, of, lot));
      return held.gt(best) ? held : best;
    }, nothing);
    return most.gte(by);
  });
}

/** Whether each lot is with an heir who sets the most on it, so that no exchange could raise the sum of all values. */
export function hasHighestSum({ values, lots }: Estate, { share }: Divided): boolean {
  return lots.every((_, lot) =>
    values.every((row, heir) =>
      values.every(
        (other, holder) =>
          cell(share, holder, lot).equals(0) ||
          (other[lot] as Exact).gte(row[lot] as Exact) ||
          heir === holder,
      ),
    ),
  );
}

function cell(rows: readonly (readonly Exact[])[], row: number, column: number): Exact {
  return (rows[row] as readonly Exact[])[column] as Exact;
}
