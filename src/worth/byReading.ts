/** What the piece would be worth under one reading: a range, and within it the best figure. */
export type ValueRange = { low: number; high: number; best?: number | undefined };

/** One reading with its probability (0–1) and what it would be worth. */
export type ValuedReading = { id: string; probability: number; value: ValueRange };

/** The best figure of a range: its own, or the middle. */
export function bestOf({ low, high, best }: ValueRange): number {
  return best ?? (low + high) / 2;
}

/** The mean over all readings, weighed by their probabilities (which need not add up to 1). */
export function expectedValue(readings: readonly ValuedReading[]): number {
  const all = readings.reduce((sum, { probability }) => sum + probability, 0);
  return readings.reduce((sum, { probability, value }) => sum + probability * bestOf(value), 0) / all;
}

/** How far, on average, the worth under the reading that is true lies from what is expected. */
export function hangingOnDoubt(readings: readonly ValuedReading[]): number {
  const expected = expectedValue(readings);
  const all = readings.reduce((sum, { probability }) => sum + probability, 0);
  return (
    readings.reduce(
      (sum, { probability, value }) => sum + probability * Math.abs(bestOf(value) - expected),
      0,
    ) / all
  );
}

/**
 * The value that the worth stays below with this probability: over the readings, and within each evenly between low and best and between
 * best and high, half of the probability on either side.
 *
 * @param share  0 < share < 1
 */
export function mixedQuantile(readings: readonly ValuedReading[], share: number): number {
  const all = readings.reduce((sum, { probability }) => sum + probability, 0);
  const below = (value: number) =>
    readings.reduce((sum, { probability, value: range }) => sum + probability * shareBelow(range, value), 0) /
    all;
  const possible = readings.filter(({ probability }) => probability > 0);
  let [low, high] = [
    Math.min(...possible.map(({ value }) => value.low)),
    Math.max(...possible.map(({ value }) => value.high)),
  ];
  for (let step = 0; step < 200 && high - low > 1e-9 * Math.max(1, Math.abs(high)); step++) {
    const middle = (low + high) / 2;
    if (below(middle) < share) low = middle;
    else high = middle;
  }
  return high;
}

function shareBelow(range: ValueRange, value: number): number {
  const best = bestOf(range);
  if (value >= range.high) return 1;
  if (value < range.low) return 0;
  return value < best
    ? (value - range.low) / (best - range.low) / 2
    : 0.5 + (value - best) / (range.high - best) / 2;
}

/** An examination still to be made: how probable each outcome is under each reading. */
export type Outcome = { name: string; given: Readonly<Record<string, number>> };

/** What an examination is worth. */
export type ExaminationWorth = {
  /** By how much it lowers, on average, what hangs on the doubt. */
  lessAtStake: number;
  /** Where the piece can be had for a price: by how much the buyer is better off, on average, who examines first. */
  forBuyer?: number;
};

/**
 * What is it worth to make one more examination before deciding?
 *
 * Method: each outcome moves the readings by Bayes' rule. A buyer buys where the expected worth is above the price; the difference that
 * the outcome makes to what the buyer gains on average, and to what hangs on the doubt. Never below nothing.
 *
 * @param outcomes  left out: one that would settle the reading altogether, which no examination surpasses
 * @source value of information: Raiffa and Schlaifer (1961), from memory
 */
export function examinationWorth(
  readings: readonly ValuedReading[],
  price: number | undefined,
  outcomes?: readonly Outcome[],
): ExaminationWorth {
  const each = outcomes ?? readings.map(({ id }) => ({ name: id, given: { [id]: 1 } }));
  const after = each.map(({ given }) => {
    const joint = readings.map((reading) => ({
      ...reading,
      probability: reading.probability * (given[reading.id] ?? 0),
    }));
    return { joint, share: joint.reduce((sum, { probability }) => sum + probability, 0) };
  });
  const all = after.reduce((sum, { share }) => sum + share, 0);
  const possible = after.filter(({ share }) => share > 0);
  const average = (of: (readings: readonly ValuedReading[]) => number) =>
    possible.reduce((sum, { joint, share }) => sum + (share / all) * of(joint), 0);
  const gain = (of: readonly ValuedReading[]) => Math.max(0, expectedValue(of) - (price ?? 0));
  return {
    lessAtStake: Math.max(0, hangingOnDoubt(readings) - average(hangingOnDoubt)),
    ...(price === undefined ? {} : { forBuyer: Math.max(0, average(gain) - gain(readings)) }),
  };
}
