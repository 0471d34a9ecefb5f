/** A middle value and its standard deviation. */
export type Spread = { mean: number; sd: number };

/** What is known of a part that was made round, before its two diameters are compared. */
export type RoundPart = {
  /** The diameter that moved least: along the grain of a top, across the rings of a turned leg. */
  alongMm: number;
  /** How much more the other diameter moves, as a share for each percent of moisture, and how far single boards depart. */
  coefficient: Spread;
  /** Moisture now, in percent. */
  moistureNow: Spread;
  /** Standard deviation of how far from round it was made, mm. */
  madeMm: number;
  /** Standard uncertainty of each diameter as measured, mm. */
  sigmaMm: number;
  /** Share of such parts that are out of round for another reason, and the standard deviation of those, mm. */
  otherCauses: { share: number; sdMm: number };
};

/**
 * By how much the diameters of a part that was made round should differ by now.
 *
 * Method: difference = d · c · (M₀ − M₁) with the diameter d, the movement c, and the moistures M₀ at making and M₁ now,
 * all independent. Its mean and variance are exact: d · C · δ and d² [C² s² + σ_c² (δ² + s²)], plus making and measuring.
 *
 * @param moistureAtMaking  M₀, percent
 * @returns { meanMm, sdMm } of (diameter along − diameter across) as it would be measured; standard deviation, k = 1
 * @source ours: moments of a product of independent quantities, on the movement equation of wood-handbook, chapter 13
 */
export function expectedOutOfRound(
  part: RoundPart,
  moistureAtMaking: Spread,
): { meanMm: number; sdMm: number } {
  const { mean: lost, variance } = loss(part, moistureAtMaking);
  const { mean, sd } = part.coefficient;
  const moved = part.alongMm ** 2 * (mean ** 2 * variance + sd ** 2 * (lost ** 2 + variance));
  return { meanMm: part.alongMm * mean * lost, sdMm: Math.sqrt(moved + steadyVariance(part)) };
}

/**
 * How much better one moisture at making explains the two diameters than another does.
 *
 * Method: the density of the measured difference under each, one divided by the other. Given c the difference is normal;
 * c is summed over ± 7 standard deviations in 280 steps. Under both the same share of parts is out of round for some
 * other reason and widely so: without it a single measure could seem to prove anything.
 *
 * @param differenceMm  diameter along − diameter across, as measured
 * @returns above 1 favours `first`
 * @accuracy the sum over c is within 1e-9 of one with ten times the steps (tested)
 * @source ours
 */
export function outOfRoundRatio(
  part: RoundPart,
  differenceMm: number,
  first: Spread,
  second: Spread,
  steps = 280,
): number {
  return density(part, differenceMm, first, steps) / density(part, differenceMm, second, steps);
}

function density(part: RoundPart, differenceMm: number, atMaking: Spread, steps: number): number {
  const { mean: lost, variance } = loss(part, atMaking);
  const { share, sdMm } = part.otherCauses;
  let weights = 0;
  let sum = 0;
  for (let step = 0; step <= steps; step++) {
    const z = -7 + (14 * step) / steps;
    const c = part.coefficient.mean + z * part.coefficient.sd;
    const weight = Math.exp(-0.5 * z * z);
    const spread = Math.sqrt((part.alongMm * c) ** 2 * variance + steadyVariance(part));
    weights += weight;
    sum += weight * normal(differenceMm, part.alongMm * c * lost, spread);
  }
  const elsewise = normal(differenceMm, 0, Math.sqrt(sdMm ** 2 + steadyVariance(part)));
  return (1 - share) * (sum / weights) + share * elsewise;
}

/** Moisture lost since the making. */
function loss(part: RoundPart, atMaking: Spread): { mean: number; variance: number } {
  return {
    mean: atMaking.mean - part.moistureNow.mean,
    variance: atMaking.sd ** 2 + part.moistureNow.sd ** 2,
  };
}

/** What making and two measures add. */
function steadyVariance(part: RoundPart): number {
  return part.madeMm ** 2 + 2 * part.sigmaMm ** 2;
}

function normal(x: number, mean: number, sd: number): number {
  return Math.exp(-0.5 * ((x - mean) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
}
