import { type SignDrawing, type StrokeKind, signDrawingBox } from '../knowledge/signDrawingSchema.ts';
import { labelSize, placeLabel } from './signLabels.ts';
import { signStrokes } from './signStrokes.ts';
import { escapeXml, svgText } from './svgText.ts';

/**
 * A sign's drawing as a complete SVG picture, for paper: white ground, one line weight, grain in a softer line, words beside
 * what they name.
 *
 * @param idPrefix  put before every id, so that two drawings on one page keep apart
 */
export function signDrawingSvg(drawing: SignDrawing, idPrefix = `sign-${drawing.id}`): string {
  const { width, height } = signDrawingBox;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${idPrefix}-title ${idPrefix}-desc">`,
    `<title id="${idPrefix}-title">${escapeXml(drawing.title)}</title>`,
    `<desc id="${idPrefix}-desc">${escapeXml(drawing.what)}</desc>`,
    '<g stroke-linejoin="round" stroke-linecap="round" fill-rule="evenodd">',
    ...signStrokes(drawing).map(({ as, d }) => `<path d="${d}" ${onPaper[as]}/>`),
    ...(drawing.labels ?? [])
      .map(placeLabel)
      .flatMap(({ words, x, baseline, leader }) => [
        leader === undefined ? '' : `<path d="${leader}" ${onPaper.mark}/>`,
        svgText(words, [x, baseline], { size: labelSize, ink: '#2b2622', anchor: 'middle', halo: '#fffdf9' }),
      ]),
    '</g></svg>',
  ].join('');
}

const edge = 'stroke="#2b2622" stroke-width="0.55"';

/** The look of each kind of stroke on white paper. */
const onPaper: Record<StrokeKind, string> = {
  wood: `fill="#f3e9d8" ${edge}`,
  end: `fill="#e3d2b5" ${edge}`,
  pale: `fill="#fdfaf3" ${edge}`,
  dark: `fill="#c9ad86" ${edge}`,
  gap: `fill="#4a3b2f" ${edge}`,
  metal: `fill="#e4e2de" ${edge}`,
  dirt: 'fill="#6b5138" fill-opacity="0.38"',
  worn: 'fill="#fffdf6" fill-opacity="0.72"',
  line: `fill="none" ${edge}`,
  thin: 'fill="none" stroke="#7d6f61" stroke-width="0.35"',
  hidden: `fill="none" ${edge} stroke-dasharray="1.6 1.4"`,
  mark: 'fill="none" stroke="#1d5a6f" stroke-width="0.7"',
};
