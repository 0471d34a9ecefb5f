/**
 * How much doubt is in these shares, in bits; nothing times its logarithm is nothing.
 *
 * @param shares  numbers from 0 to 1 that sum to 1
 * @source Shannon (1948)
 */
export function entropyBits(shares: readonly number[]): number {
  return shares.reduce((bits, share) => (share > 0 ? bits - share * Math.log2(share) : bits), 0);
}
