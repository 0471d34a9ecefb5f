/** Whole numbers: what each heir, a row, sets on each lot. */
export type Rows = readonly (readonly number[])[];

/**
 * A good allocation to begin from: each lot, the most valued first, to whoever has least then and values it most; after that single
 * lots are moved and pairs exchanged as long as the least share rises, or the next.
 *
 * @returns for each lot the index of its heir
 * @source hill climbing; common practice
 */
export function climbedShare(values: Rows, order: readonly number[]): number[] {
  const holder = order.map(() => 0);
  const had = values.map(() => 0);
  for (const lot of order) {
    const worth = (heir: number) => (had[heir] as number) - (values[heir]?.[lot] as number) / 2;
    const to = values.reduce((least, _, heir) => (worth(heir) < worth(least) ? heir : least), 0);
    holder[lot] = to;
    had[to] = (had[to] as number) + (values[to]?.[lot] as number);
  }
  for (let steps = 0; steps < 500; steps++) {
    const now = risingShares(values, holder);
    const better = neighbors(holder, values.length).find((next) => isBetter(risingShares(values, next), now));
    if (better === undefined) return holder;
    for (const [lot, heir] of better.entries()) holder[lot] = heir;
  }
  return holder;
}

/** What each heir has, least first. */
export function risingShares(values: Rows, holder: readonly number[]): number[] {
  return values
    .map((row, heir) => row.reduce((sum, value, lot) => (holder[lot] === heir ? sum + value : sum), 0))
    .sort((a, b) => a - b);
}

/** Whether the first of two rows of shares, least first, is higher where they begin to differ. */
export function isBetter(one: readonly number[], other: readonly number[]): boolean {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at >= 0 && (one[at] as number) > (other[at] as number);
}

/** Every allocation that one move or one exchange makes of this one. */
function neighbors(holder: readonly number[], heirs: number): number[][] {
  const moved = holder.flatMap((from, lot) =>
    Array.from({ length: heirs }, (_, to) => to)
      .filter((to) => to !== from)
      .map((to) => holder.with(lot, to)),
  );
  const exchanged = holder.flatMap((one, lot) =>
    holder
      .slice(lot + 1)
      .flatMap((other, further) =>
        one === other ? [] : [holder.with(lot, other).with(lot + 1 + further, one)],
      ),
  );
  return [...moved, ...exchanged];
}
