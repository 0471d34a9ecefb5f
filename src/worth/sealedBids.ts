import { type Exact, nothing, total } from './exactMoney.ts';
import type { Estate } from './lots.ts';

/** Who gets which lot, and what passes in money. Positive is what the heir receives. */
export type SealedBids = {
  /** For each lot the index of its heir. */
  holder: number[];
  /** An equal part of what the heir holds all of it to be worth. */
  fairShare: Exact[];
  payments: Exact[];
  surplus: Exact;
};

/**
 * Who gets what by sealed bids, and who pays whom?
 *
 * Method: each lot goes to the highest bid, of equal bids to the heir listed first; each heir is brought to an equal part of their own
 * total in money; what is left over is split equally. Payments add up to nothing, exactly.
 *
 * @source Knaster's procedure, as told by Steinhaus (1948): from memory; held against a published example
 */
export function sealedBids({ heirs, lots, values }: Estate): SealedBids {
  const holder = lots.map((_, lot) => highest(values.map((row) => row[lot] as Exact)));
  const fairShare = values.map((row) => total(row).div(heirs.length));
  const got = values.map((row, heir) => total(row.filter((_, lot) => holder[lot] === heir)));
  const before = fairShare.map((share, heir) => share.sub(got[heir] as Exact));
  const surplus = nothing.sub(total(before));
  const each = surplus.div(heirs.length);
  return { holder, fairShare, payments: before.map((payment) => payment.add(each)), surplus };
}

function highest(bids: readonly Exact[]): number {
  return bids.reduce((best, bid, index) => (bid.compare(bids[best] as Exact) > 0 ? index : best), 0);
}
