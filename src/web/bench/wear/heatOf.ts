import { mean } from '../../../ground/statistics.ts';
import type { WearSurface } from './wearWords.ts';

/** How heat runs over a part's outline in a view: shares from 0 to 1 along x or y of its box. */
export type Heat = { axis: 'x' | 'y'; shares: number[] };

const hidden: Readonly<Record<string, readonly string[]>> = {
  front: ['back', 'underside', 'inside', 'inner face'],
  side: ['inside', 'underside', 'inner face'],
  back: ['front', 'underside', 'inside'],
  inside: ['back', 'underside'],
  underside: ['top', 'upper edge'],
};

/**
 * How much use touches each place of a part, as it is seen in a view.
 *
 * Method: the most touched of the faces that the view shows, place by place, times how many of 100 uses touch the part. A length that runs towards
 * the eye is shown as its mean.
 *
 * @param view       front, side, back, inside or underside
 * @param isSeating  whether left and front are those of a sitter: see the views of a form's drawing
 */
export function heatOf(surfaces: readonly WearSurface[], view: string, isSeating: boolean): Heat | undefined {
  if (surfaces.length === 0) return undefined;
  const lines = surfaces.map((surface) => {
    const seen = surface.faces.flatMap((face, at) =>
      hidden[view]?.includes(face) ? [] : [surface.grid[at] as number[]],
    );
    const rows = seen.length > 0 ? seen : surface.grid;
    const shares = (rows[0] as number[]).map(
      (_, at) => (Math.max(...rows.map((row) => row[at] as number)) * surface.per100Uses) / 100,
    );
    return { ...laid(surface.along.from, view, isSeating), shares };
  });
  // A front that lies across the view says more there than sides that run away from the eye.
  const inView = lines.filter(({ axis }) => axis !== 'none');
  const strongest = (inView.length > 0 ? inView : lines).reduce((a, b) =>
    Math.max(...b.shares) > Math.max(...a.shares) ? b : a,
  );
  if (strongest.axis === 'none') {
    const average = mean(strongest.shares);
    return { axis: 'x', shares: [average] };
  }
  const shares = strongest.isTurned ? strongest.shares.toReversed() : strongest.shares;
  return { axis: strongest.axis, shares };
}

/** Which way a surface that begins at one end lies in a view. */
function laid(
  from: string,
  view: string,
  isSeating: boolean,
): { axis: 'x' | 'y' | 'none'; isTurned: boolean } {
  if (from === 'left')
    return view === 'side'
      ? { axis: 'none', isTurned: false }
      : { axis: 'x', isTurned: isSeating && view !== 'back' };
  if (from === 'floor' || from === 'bottom')
    return view === 'underside' ? { axis: 'none', isTurned: false } : { axis: 'y', isTurned: true };
  if (view === 'side') return { axis: 'x', isTurned: (from === 'front') !== isSeating };
  if (view === 'underside') return { axis: 'y', isTurned: from !== 'front' };
  return { axis: 'none', isTurned: false };
}
