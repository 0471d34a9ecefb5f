import { hatchPattern, type Standing, standings } from '../../drawing/hatching.ts';

/** The id of a hatching within one drawing. */
export function hatchId(drawing: string, standing: Standing): string {
  return `${drawing}-${standing}`;
}

/**
 * The hatchings of a drawing, as patterns, in the colour of its text: the same as those that are printed.
 *
 * @param gap  distance between lines, in the drawing's own units
 */
export function Hatches({ drawing, gap }: { drawing: string; gap: number }) {
  const patterns = standings
    .map((each) => hatchPattern(each, hatchId(drawing, each), gap, 'currentColor'))
    .join('');
  // biome-ignore lint/security/noDangerouslySetInnerHtml: made by our own drawing room from fixed words and numbers
  return <defs dangerouslySetInnerHTML={{ __html: patterns }} />;
}
