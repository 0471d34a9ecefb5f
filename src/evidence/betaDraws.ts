import { type BetaShapes, betaOfRange } from '../ground/betaDistribution.ts';
import { normalDraw, type Random } from '../ground/seededRandom.ts';
import type { Figure } from '../knowledge/figureSchema.ts';
import { type Draw, figureRange } from './figures.ts';

/**
 * Draws every figure anew, once, from the Beta distribution of its range.
 *
 * @param first  figures drawn at once, in this order; others are drawn when they are asked for
 */
export function betaDraw(random: Random, first: readonly BetaFigure[] = []): Draw {
  const drawn = new Map<Figure, number>();
  for (const each of first) drawn.set(each.figure, drawFrom(each, random));
  return (figure) => {
    const known = drawn.get(figure);
    if (known !== undefined) return known;
    const value = drawFrom(betaFigure(figure), random);
    drawn.set(figure, value);
    return value;
  };
}

/** A figure with the shapes of its Beta distribution; without them it always has its best value. */
export type BetaFigure = { figure: Figure; best: number; shapes: BetaShapes | undefined };

/** The Beta distribution of a figure. */
export function betaFigure(figure: Figure): BetaFigure {
  const range = figureRange(figure);
  return { figure, best: range.best, shapes: betaOfRange(range) };
}

function drawFrom({ best, shapes }: BetaFigure, random: Random): number {
  if (shapes === undefined) return best;
  const x = gamma(shapes[0], random);
  const y = gamma(shapes[1], random);
  return x + y > 0 ? x / (x + y) : best;
}

/** A Gamma draw with the given shape and scale 1. @source Marsaglia and Tsang, ACM TOMS 26 (2000) 363–372; from memory */
function gamma(shape: number, random: Random): number {
  if (shape < 1) return gamma(shape + 1, random) * random() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normalDraw(random);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}
