import type { Form } from '../knowledge/schema.ts';
import type { Lengths } from './expression.ts';
import { type Box, extentOf } from './extentOf.ts';
import { type Area, labelPoint } from './labelPoint.ts';
import { type DrawingFault, lengthsOf } from './lengthsOf.ts';
import { flattened, moved, type Run } from './outline.ts';
import { featuresOf, isMet, partsOf } from './partsOf.ts';
import { readPath } from './path.ts';
import { pathData } from './pathData.ts';
import { shapeRuns } from './shapeRuns.ts';

export type ViewId = Form['drawing'][number]['view'];

/** A piece in lines: each view a row of part outlines, those behind first. */
export type Drawing = {
  views: {
    view: ViewId;
    name: string;
    /** What to show: the piece and a narrow margin for the line. [left, top, width, height] in mm, y down. */
    box: Box;
    /** The drawn piece itself, without a margin. */
    extent: Box;
    shapes: { part: string; d: string; label: [number, number] }[];
  }[];
  /** What could not be drawn, and why. */
  faults: DrawingFault[];
};

/**
 * What does a piece of this form and these sizes look like from the front, the side and below?
 *
 * Method: every shape of the form's drawing whose part this piece has, its points worked out from the measures. From the
 * front, the back and below, x is 0 in the middle; whose left and right are meant stands in the form (`sides`), and where they
 * then lie in `sides.ts`. The side view is named after the side whose parts it shows. The inside is seen from
 * in front with drawers out and doors open; from below the piece is seen as if tipped onto its back, its front on top. All in
 * mm, y down.
 *
 * @param features    the option chosen of each feature; the first where none is
 * @param measuresMm  by the measure's id; usual sizes where one is missing
 * @returns the views that have a shape, in the order front, side, back, inside, underside; a shape that can't be drawn is left out and
 *   told in `faults`
 */
export function drawForm(
  form: Form,
  features: Record<string, string>,
  measuresMm: Record<string, number>,
): Drawing {
  const { lengths, faults } = lengthsOf(form, measuresMm, features);
  const chosen = featuresOf(form, features);
  const there = new Set(partsOf(form, features).map((part) => part.id));
  const drawn: Shape[] = [];
  for (const shape of form.drawing) {
    if (!isMet(shape.when, chosen)) continue;
    const read = shapesOf(shape, lengths, form.shapes);
    if (Array.isArray(read)) drawn.push(...read.filter(({ part }) => there.has(part)));
    else faults.push(read);
  }
  const views = viewIds.flatMap((view) => {
    const shapes = drawn.filter((shape) => shape.view === view);
    return shapes.length === 0 ? [] : [assembleView(view, shapes)];
  });
  return { views, faults };
}

const viewIds: readonly ViewId[] = ['front', 'side', 'back', 'inside', 'underside'];

const viewNames: Readonly<Record<ViewId, string>> = {
  front: 'Front',
  side: 'Side',
  inside: 'Inside, drawers out and doors open',
  back: 'Back',
  underside: 'Underside, front on top',
};

/** A side view is named after the side most of whose parts it shows; behind them one of the other side may be seen. */
function sideName(shapes: readonly Shape[]): string {
  const shown = (side: string) => shapes.filter(({ part }) => part.endsWith(`-${side}`)).length;
  if (shown('left') === shown('right')) return viewNames.side;
  return shown('left') > shown('right') ? 'Left side' : 'Right side';
}

type Shape = { part: string; view: ViewId; runs: Run[] };

function shapesOf(
  { part, view, path, mirror }: Form['drawing'][number],
  lengths: Lengths,
  shapes: Form['shapes'],
) {
  const at = `${part}, ${view}`;
  if (mirror && view === 'side') {
    const message = 'A side view shows one side only: leave out mirror here.';
    return { code: 'drawing.mirror-in-side-view', at, message } satisfies DrawingFault;
  }
  const other = otherOfPair(part);
  const read = readPath(path, lengths, mirror && other === part, shapes);
  if (!read.ok) return { code: 'drawing.path-unreadable', at, message: read.message } satisfies DrawingFault;
  const down = read.runs.map((run) => moved(run, ([x, y]) => [x, -y]));
  if (!mirror) return [{ part, view, runs: shapeRuns(down, 'none') }];
  if (other === part) return [{ part, view, runs: shapeRuns(down, 'whole') }];
  return [
    { part, view, runs: shapeRuns(down, 'none') },
    { part: other, view, runs: shapeRuns(down, 'other') },
  ];
}

/** The right one of a left, the left one of a right; a part without a pair is its own. */
function otherOfPair(part: string): string {
  if (part.endsWith('-left')) return `${part.slice(0, -'left'.length)}right`;
  if (part.endsWith('-right')) return `${part.slice(0, -'right'.length)}left`;
  return part;
}

function assembleView(view: ViewId, shapes: readonly Shape[]): Drawing['views'][number] {
  const areas = shapes.map(
    ({ runs }): Area => ({
      polygons: runs.filter((run) => !run.incised).map((run) => flattened(run, 5)),
      box: extentOf(runs),
    }),
  );
  const extent = extentOf(shapes.flatMap(({ runs }) => runs));
  const margin = Math.max(extent[2], extent[3]) * 0.015;
  return {
    view,
    name: view === 'side' ? sideName(shapes) : viewNames[view],
    extent,
    box: [extent[0] - margin, extent[1] - margin, extent[2] + 2 * margin, extent[3] + 2 * margin],
    shapes: shapes.map(({ part, runs }, i) => ({
      part,
      d: pathData(runs),
      label: labelPoint(areas[i] as Area, areas.slice(i + 1)),
    })),
  };
}
