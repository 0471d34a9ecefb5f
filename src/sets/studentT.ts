/**
 * The critical value of Grubbs’ test.
 *
 * Method: (n − 1)/√n · √(t² / (n − 2 + t²)) with t the upper α/(sides · n) point of Student’s t with n − 2 degrees of freedom.
 *
 * @param n      how many values, at least 3
 * @param sides  1 where only one end was suspected beforehand, 2 otherwise
 * @accuracy within 1e-6 of values reckoned outside this program
 * @source Grubbs 1969, from memory
 */
export function grubbsCritical(n: number, alpha: number, sides: 1 | 2): number {
  if (!(n >= 3)) throw new RangeError(`grubbsCritical needs 3 values, got ${n}`);
  const t = studentUpper(alpha / (sides * n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/** The value that Student’s t with these degrees of freedom passes with this probability, below ½. */
export function studentUpper(probability: number, freedom: number): number {
  if (!(probability > 0 && probability < 0.5 && freedom > 0))
    throw new RangeError(`studentUpper needs a probability within 0 to ½, got ${probability}`);
  let [low, high] = [0, 1];
  while (studentTail(high, freedom) > probability) high *= 2;
  for (let step = 0; step < 200 && high - low > 1e-14 * high; step++) {
    const middle = (low + high) / 2;
    if (studentTail(middle, freedom) > probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** P(T > t) for t ≥ 0: half of the incomplete beta function at ν/(ν + t²). */
function studentTail(t: number, freedom: number): number {
  return incompleteBeta(freedom / (freedom + t * t), freedom / 2, 0.5) / 2;
}

/** The regularized incomplete beta function, by its continued fraction. */
function incompleteBeta(x: number, a: number, b: number): number {
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
