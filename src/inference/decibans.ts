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

/** The likelihood ratio that weighs so many decibans. */
export function likelihoodRatioOf(decibansGiven: number): number {
  return 10 ** (decibansGiven / 10);
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

/** Odds for against against. @throws RangeError if the probability is outside 0 to 1 */
export function oddsOf(probability: number): number {
  if (!(probability >= 0 && probability <= 1))
    throw new RangeError(`oddsOf needs a probability from 0 to 1, got ${probability}`);
  return probability / (1 - probability);
}

/** The probability that goes with odds. @throws RangeError if they are below 0 or no number */
export function probabilityOf(odds: number): number {
  requireNonNegative('probabilityOf', odds);
  return odds === Number.POSITIVE_INFINITY ? 1 : odds / (1 + odds);
}

/**
 * What the evidence between two states of knowledge weighs for a hypothesis, in decibans.
 *
 * Method: 10 log10(odds after / odds before). Weights of findings that share a cause do not add.
 *
 * @throws RangeError if a probability is outside 0 to 1
 * @source Good (1950)
 */
export function weightOfEvidence(probabilityBefore: number, probabilityAfter: number): number {
  return 10 * (Math.log10(oddsOf(probabilityAfter)) - Math.log10(oddsOf(probabilityBefore)));
}

function requireNonNegative(name: string, value: number): void {
  if (!(value >= 0)) throw new RangeError(`${name} needs a number from 0 up, got ${value}`);
}
