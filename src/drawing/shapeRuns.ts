import {
  doubleArea,
  endOf,
  flattened,
  isInside,
  lineTo,
  moved,
  type Point,
  type Run,
  reversed,
} from './outline.ts';

/**
 * The runs of one part's shape, ready to be drawn: halves joined to their mirror, openings turned against the outline
 * so that they stay open under either fill rule.
 *
 * @param runs    as a path draws them
 * @param mirror  `none`; `whole`: mirrored at x = 0 in one shape, open outlines joined to their mirror; `other`: the
 *                mirror image only, for the part on the other side
 */
export function shapeRuns(runs: readonly Run[], mirror: 'none' | 'whole' | 'other'): Run[] {
  const drawn =
    mirror === 'none' ? [...runs] : runs.flatMap((run) => (mirror === 'other' ? [flip(run)] : whole(run)));
  return turned(drawn.map(closedUp));
}

function whole(run: Run): Run[] {
  if (run.incised || run.closed) return [run, flip(run)];
  const back = reversed(flip(run));
  const joint = lineTo(endOf(run), back.start);
  return [{ ...run, curves: [...run.curves, joint, ...back.curves], closed: true }];
}

function flip(run: Run): Run {
  return moved(run, ([x, y]): Point => [-x, y]);
}

/** An outline left open is closed by a straight line; an incised line goes there and back, and so has no inside. */
function closedUp(run: Run): Run {
  if (run.incised) return { ...run, curves: [...run.curves, ...reversed(run).curves], closed: true };
  if (run.closed) return run;
  return { ...run, curves: [...run.curves, lineTo(endOf(run), run.start)], closed: true };
}

function turned(runs: readonly Run[]): Run[] {
  const polygons = runs.map((run) => flattened(run, 6));
  return runs.map((run, index) => {
    if (run.incised) return run;
    const opening = runs.some(
      (other, at) => at < index && !other.incised && isInside(run.start, polygons[at] as Point[]),
    );
    return doubleArea(polygons[index] as Point[]) > 0 === opening ? reversed(run) : run;
  });
}
