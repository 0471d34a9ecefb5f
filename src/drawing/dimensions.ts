import type { Form } from '../knowledge/schema.ts';
import type { Point } from './outline.ts';

/** A size marked beside a view: between two places, in mm; `usual` where it was not taken of this piece. */
export type DrawnDimension = {
  measure: string;
  name: string;
  mm: number;
  usual: boolean;
  direction: 'upright' | 'level';
  from: [number, number];
  to: [number, number];
};

type View = Form['drawing'][number]['view'];

/** Which measures are marked where, nearest to the picture first. */
const marked: Record<View, { measure: string; direction: DrawnDimension['direction'] }[]> = {
  front: [
    { measure: 'seat-height', direction: 'upright' },
    { measure: 'height', direction: 'upright' },
    { measure: 'width', direction: 'level' },
  ],
  side: [{ measure: 'depth', direction: 'level' }],
  back: [],
  inside: [],
  underside: [],
};

/**
 * The sizes marked beside a view: heights from the floor up, at its left; breadths over its whole width, beneath it.
 *
 * @param box  [minX, minY, width, height] of the view, y down
 */
export function dimensionsOf(
  view: View,
  [minX, minY, width, height]: readonly [number, number, number, number],
  measures: readonly Form['measures'][number][],
  measuresMm: Readonly<Record<string, number>>,
): DrawnDimension[] {
  const floor = minY + height;
  return marked[view].flatMap(({ measure, direction }): DrawnDimension[] => {
    const found = measures.find(({ id }) => id === measure);
    if (found === undefined) return [];
    const mm = measuresMm[measure] ?? found.typicalMm;
    const ends: [Point, Point] =
      direction === 'upright'
        ? [
            [minX, floor],
            [minX, floor - mm],
          ]
        : [
            [minX, floor],
            [minX + width, floor],
          ];
    return [
      {
        measure,
        name: found.name,
        mm,
        usual: measuresMm[measure] === undefined,
        direction,
        from: [...ends[0]],
        to: [...ends[1]],
      },
    ];
  });
}
