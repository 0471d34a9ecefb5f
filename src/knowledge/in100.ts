/** A share as one of 100, as finely as is told apart: whole numbers in the middle, tenths and hundredths near never and always. */
export function in100(share: number): string {
  const toEdge = 100 * Math.min(share, 1 - share);
  const digits = toEdge < 1 ? 2 : toEdge < 10 ? 1 : 0;
  return String(Number(Math.min(Math.max(100 * share, 0.01), 99.99).toFixed(digits)));
}
