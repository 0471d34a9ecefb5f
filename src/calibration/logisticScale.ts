import { mean } from '../ground/statistics.ts';

/** A line that turns scores into log odds: ln(p / (1 − p)) = intercept + slope · score. */
export type LogisticScale = { intercept: number; slope: number };

const mostSteps = 100;

/**
 * The line through log odds that makes what came true most probable.
 *
 * Method: Newton’s method on the likelihood, halving a step that would lower it; scores are brought to mean 0 and spread 1 before.
 *
 * @param scores  at least two different ones
 * @param came    boolean[n]
 * @returns undefined where a bound on the score parts true from false: the slope then has no end
 * @source logistic regression by maximum likelihood, common practice
 */
export function logisticScale(
  scores: readonly number[],
  came: readonly boolean[],
): LogisticScale | undefined {
  if (partedByBound(scores, came)) return undefined;
  const average = mean(scores);
  const spread = Math.sqrt(scores.reduce((sum, each) => sum + (each - average) ** 2, 0) / scores.length);
  const x = scores.map((each) => (each - average) / spread);
  let [a, b] = [0, 0];
  let reached = logLikelihood(x, came, a, b);
  for (let step = 0; step < mostSteps; step++) {
    const [da, db] = newtonStep(x, came, a, b);
    let length = 1;
    let there = logLikelihood(x, came, a + da, b + db);
    while (there < reached - 1e-12 && length > 1e-9) {
      length /= 2;
      there = logLikelihood(x, came, a + length * da, b + length * db);
    }
    a += length * da;
    b += length * db;
    reached = there;
    if (Math.hypot(da, db) < 1e-13 * (1 + Math.hypot(a, b))) break;
  }
  return { intercept: a - (b * average) / spread, slope: b / spread };
}

/** Whether some bound has no true case on one side and no false one on the other; a score on the bound may be both. */
function partedByBound(scores: readonly number[], came: readonly boolean[]): boolean {
  const yes = scores.filter((_, index) => came[index]);
  const no = scores.filter((_, index) => !came[index]);
  if (yes.length === 0 || no.length === 0 || new Set(scores).size < 2) return true;
  return Math.min(...yes) >= Math.max(...no) || Math.max(...yes) <= Math.min(...no);
}

function logLikelihood(x: readonly number[], came: readonly boolean[], a: number, b: number): number {
  return x.reduce((sum, each, index) => {
    const against = came[index] ? -(a + b * each) : a + b * each;
    return sum - Math.max(against, 0) - Math.log1p(Math.exp(-Math.abs(against)));
  }, 0);
}

function newtonStep(x: readonly number[], came: readonly boolean[], a: number, b: number): [number, number] {
  let [g0, g1, h00, h01, h11] = [0, 0, 0, 0, 0];
  x.forEach((each, index) => {
    const p = 1 / (1 + Math.exp(-(a + b * each)));
    const off = (came[index] ? 1 : 0) - p;
    const weight = p * (1 - p);
    g0 += off;
    g1 += off * each;
    h00 += weight;
    h01 += weight * each;
    h11 += weight * each * each;
  });
  const determinant = h00 * h11 - h01 * h01;
  return [(h11 * g0 - h01 * g1) / determinant, (h00 * g1 - h01 * g0) / determinant];
}
