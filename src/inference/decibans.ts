/**
 * Weight of evidence in decibans: ten times the base-ten logarithm of a likelihood ratio.
 *
 * @param likelihoodRatio  ≥ 0; 0 gives −Infinity
 * @throws RangeError      if it is below 0 or no number
 * @source I. J. Good, Probability and the Weighing of Evidence (1950): 1 ban is a factor of 10
 */
export function decibans(likelihoodRatio: number): number {
  requireNonNegative('decibans', likelihoodRatio);
  return 10 * Math.log10(likelihoodRatio);
}

/** A likelihood ratio in bits. @throws RangeError if it is below 0 or no number */
export function bitsOf(likelihoodRatio: number): number {
  requireNonNegative('bitsOf', likelihoodRatio);
  return Math.log2(likelihoodRatio);
}

/** A likelihood ratio in nats. @throws RangeError if it is below 0 or no number */
export function natsOf(likelihoodRatio: number): number {
  requireNonNegative('natsOf', likelihoodRatio);
  return Math.log(likelihoodRatio);
}

/** Natural logarithms, as differences of log evidence are, in decibans. */
export function decibansOfNats(nats: number): number {
  return (10 * nats) / Math.LN10;
}

function requireNonNegative(name: string, value: number): void {
  if (!(value >= 0)) throw new RangeError(`${name} needs a number from 0 up, got ${value}`);
}
