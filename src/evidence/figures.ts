import type { Figure } from '../knowledge/figureSchema.ts';

/** A figure read as shares: best, and the lowest and highest believable. */
export type FigureRange = { best: number; low: number; high: number };

/** Gives the share (0–1) that stands for a figure in one weighing: its best value, or a value drawn from its range. */
export type Draw = (figure: Figure) => number;

/** A figure's text `98, 95–99` as shares. @throws RangeError if the text is not of that form */
export function figureRange(figure: Figure): FigureRange {
  const match = /^([\d.]+), ([\d.]+)–([\d.]+)$/.exec(figure.in100);
  if (match === null) throw new RangeError(`a figure is written "98, 95–99", got "${figure.in100}"`);
  return { best: Number(match[1]) / 100, low: Number(match[2]) / 100, high: Number(match[3]) / 100 };
}

/** Draws that always give the best value; each figure is read once. */
export function bestDraw(): Draw {
  const read = new Map<string, number>();
  return (figure) => {
    const known = read.get(figure.in100);
    if (known !== undefined) return known;
    const best = figureRange(figure).best;
    read.set(figure.in100, best);
    return best;
  };
}

/** As another draw, but with one figure held at a given share. */
export function drawWith(draw: Draw, held: Figure, share: number): Draw {
  return (figure) => (figure === held ? share : draw(figure));
}
