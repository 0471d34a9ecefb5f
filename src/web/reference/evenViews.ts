import type { Drawing } from '../../drawing/drawForm.ts';

type View = Drawing['views'][number];

/**
 * The views with boxes of one width, so that side by side, each as wide as the next, they stand at one scale. The width is
 * that of the widest, and for a tall piece enough that no view becomes much taller than it is wide.
 */
export function evenViews(views: readonly View[]): View[] {
  const wide = Math.max(...views.map(({ box }) => box[2]), ...views.map(({ box }) => box[3] * 0.62));
  return views.map((view) => {
    const [x, y, width, height] = view.box;
    return { ...view, box: [x - (wide - width) / 2, y, wide, height] };
  });
}
