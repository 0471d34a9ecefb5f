/** A probability as it may be shown: elicited figures carry no more than 999 in 1000. */
export function shown(probability: number): number {
  return Math.min(0.999, Math.max(0.001, probability));
}
