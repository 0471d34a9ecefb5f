import { incompleteBeta } from '../ground/betaDistribution.ts';

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
function studentUpper(probability: number, freedom: number): number {
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
