import { markMeasures } from '../src/photo/toolmarks/toolmarksFeatures.ts';
import { type MarkKind, markKinds } from '../src/photo/toolmarks/toolmarksNamed.ts';
import { renderMarks } from '../test/kits/surfaces/renderMarks.ts';

/** The kinds of surface that training and proof draw: the six and one without marks. */
export const drawnKinds: readonly (MarkKind | 'none')[] = [...markKinds, 'none'];

/** What is measured on drawn surfaces of one kind, by seed. */
export function drawnMeasures(kind: MarkKind | 'none', seeds: readonly number[]) {
  return seeds.map((seed) => {
    const rendered = renderMarks(kind, seed);
    const { widthPx, heightPx } = rendered.picture;
    const measures = markMeasures(
      rendered.picture,
      { x: 0, y: 0, widthPx, heightPx },
      rendered.mmPerPx,
      (rendered.directionDeg * Math.PI) / 180,
    );
    if (measures === undefined) throw new Error(`${kind} ${seed} is too small`);
    return { kind, seed, truth: rendered.truth, measures };
  });
}
