import type { Drawing } from '../../../drawing/drawForm.ts';
import { usualSizes } from '../../../drawing/usualSizes.ts';
import type { Form } from '../../../knowledge/schema.ts';
import type { Piece } from '../../../piece/piece.ts';

/** The sizes a drawing is built from: those taken of this piece, else what is usual of its form and features. */
export function measuresMm(form: Form, piece: Pick<Piece, 'features' | 'measures'>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(usualSizes(form, piece.features)).map(([id, usual]) => [
      id,
      piece.measures[id]?.mm ?? usual,
    ]),
  );
}

/**
 * The view in which most shapes differ between two drawings of one piece, and how those shapes stand in the second.
 *
 * @returns undefined if no shape differs
 */
export function viewMovedMost(now: Drawing, then: Drawing): { view: number; shapes: string[] } | undefined {
  const moved = now.views.map((view, index) => ({
    view: index,
    shapes: view.shapes.flatMap((shape, at) => {
      const after = then.views[index]?.shapes[at];
      return after === undefined || after.d === shape.d ? [] : [after.d];
    }),
  }));
  const most = moved.reduce((a, b) => (b.shapes.length > a.shapes.length ? b : a), {
    view: -1,
    shapes: [] as string[],
  });
  return most.shapes.length === 0 ? undefined : most;
}
