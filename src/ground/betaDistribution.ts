/** The two shapes of a Beta distribution: as though `a` had been seen to have it and `b` not. */
export type BetaShapes = readonly [number, number];

/**
 * The Beta distribution of a share whose mean is the best value and whose standard deviation makes low and high about its 5th
 * and 95th percentile: (high − low) / (2 · 1.645). Undefined for a share without range, or at 0 or 1.
 *
 * @param range  shares, 0 to 1
 * @source method of moments for the Beta distribution, common practice; 1.645 is the 95 % point of the normal curve
 */
export function betaOfRange(range: { best: number; low: number; high: number }): BetaShapes | undefined {
  const { best, low, high } = range;
  const deviation = (high - low) / (2 * 1.645);
  if (deviation <= 0 || best <= 0 || best >= 1) return undefined;
  // A Beta with this mean exists only below the variance m(1 − m); wider ranges are held just inside.
  const variance = Math.min(deviation * deviation, 0.95 * best * (1 - best));
  const size = (best * (1 - best)) / variance - 1;
  return [best * size, (1 - best) * size];
}

/** A Beta distribution as a share with its range: its mean, and its 5th and 95th percentile, never on the wrong side of the mean. */
export function rangeOfBeta(shapes: BetaShapes): { best: number; low: number; high: number } {
  const best = shapes[0] / (shapes[0] + shapes[1]);
  return {
    best,
    low: Math.min(betaQuantile(shapes, 0.05), best),
    high: Math.max(betaQuantile(shapes, 0.95), best),
  };
}

/** The share that a Beta distribution stays below with this probability, by halving, to 1e-9. */
export function betaQuantile([a, b]: BetaShapes, probability: number): number {
  if (!(probability > 0 && probability < 1 && a > 0 && b > 0))
    throw new RangeError(
      `betaQuantile needs shapes above 0 and a probability within 0 to 1, got ${probability}`,
    );
  let [low, high] = [0, 1];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (incompleteBeta(middle, a, b) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The regularized incomplete beta function, by its continued fraction: the chance that a share of Beta(a, b) is at most x.
 *
 * @source Press et al., Numerical Recipes, section 6.4, from memory
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(
    a * Math.log(x) + b * Math.log(1 - x) + logGamma(a + b) - logGamma(a) - logGamma(b) - Math.log(a),
  );
  let f = 1;
  let c = 1;
  let d = 0;
  for (let i = 0; i <= 500; i++) {
    const m = Math.floor(i / 2);
    const numerator =
      i === 0
        ? 1
        : i % 2 === 0
          ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
          : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + numerator * d);
    c = away(1 + numerator / c);
    f *= c * d;
    if (i > 0 && Math.abs(1 - c * d) < 1e-15) break;
  }
  return front * (f - 1);
}

function away(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

/** ln Γ by Lanczos’ series, to about 1e-14. */
function logGamma(z: number): number {
  if (z < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * z)) - logGamma(1 - z);
  const series = lanczos.reduce(
    (sum, coefficient, index) => sum + (index === 0 ? coefficient : coefficient / (z - 1 + index)),
    0,
  );
  const t = z + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (z - 0.5) * Math.log(t) - t + Math.log(series);
}

const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
