/** What a measurement says of one sign. */
export type MeasuredFinding = {
  sign: string;
  /**
   * How probable it makes what was measured, in proportion: under `present` and `absent`, or under the states of the unknown the
   * sign hangs on.
   */
  likelihoods: Readonly<Record<string, number>>;
  /** The answer it leans to; a measurement of the states of a cause is entered as present. */
  state: 'present' | 'absent';
  /** What to look for besides, before it is entered. */
  besides?: string;
};

/** The same likelihoods for each of the signs. */
export function findingsOn(
  signs: readonly string[],
  likelihoods: Readonly<Record<string, number>>,
): MeasuredFinding[] {
  return signs.map((sign) => ({ sign, likelihoods, state: leansTo(likelihoods) }));
}

function leansTo({ present, absent }: Readonly<Record<string, number>>): 'present' | 'absent' {
  return present === undefined || absent === undefined || present >= absent ? 'present' : 'absent';
}

/** Two likelihoods in a ratio, the larger 1. */
export function inProportion(ratio: number): { first: number; second: number } {
  return { first: ratio / Math.max(1, ratio), second: 1 / Math.max(1, ratio) };
}

/** A ratio held within 1/most to most. */
export function heldWithin(ratio: number, most: number): number {
  return Math.min(most, Math.max(1 / most, ratio));
}

/** How probable a normal quantity is at a value, up to a factor that all share. */
export function normalDensity(
  value: number,
  { mean, sd }: { mean: number; sd: number },
  sigma: number,
): number {
  const spread = Math.hypot(sd, sigma);
  return Math.exp(-0.5 * ((value - mean) / spread) ** 2) / spread;
}
