import { type Exact, exact, total } from './exactMoney.ts';

/** What goes to one heir whole: a single piece, or pieces that stay together. */
export type Lot = { items: readonly string[] };

/** What is to be divided: each heir's own value of each lot, `values[heir][lot]`. */
export type Estate = {
  heirs: readonly string[];
  lots: readonly Lot[];
  values: readonly (readonly Exact[])[];
};

/**
 * Pieces and bids as lots with their values. Pieces that are named together in `keepTogether`, directly or through others, make one lot;
 * its value is the sum of the bids on its pieces. Lots stand in the order of their first piece.
 *
 * @param bids  every heir's bid on every item
 */
export function estateOf(
  heirs: readonly string[],
  items: readonly string[],
  bids: Readonly<Record<string, Readonly<Record<string, number>>>>,
  keepTogether: readonly (readonly string[])[],
): Estate {
  const lots = joined(items, keepTogether).map((each) => ({ items: each }));
  const bid = (heir: string, item: string) => exact(bids[heir]?.[item] as number);
  const values = heirs.map((heir) => lots.map((lot) => total(lot.items.map((item) => bid(heir, item)))));
  return { heirs, lots, values };
}

function joined(items: readonly string[], groups: readonly (readonly string[])[]): string[][] {
  let lots = items.map((item) => [item]);
  for (const group of groups) {
    const touches = (lot: readonly string[]) => lot.some((item) => group.includes(item));
    const one = new Set(lots.filter(touches).flat());
    const whole = items.filter((item) => one.has(item));
    const first = lots.findIndex(touches);
    lots = lots.flatMap((lot, index) => (index === first ? [whole] : touches(lot) ? [] : [lot]));
  }
  return lots;
}
