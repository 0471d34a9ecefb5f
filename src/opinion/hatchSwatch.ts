import { drawnIn, hatchPattern, isPale, type Standing } from '../drawing/hatching.ts';

const [wide, high] = [34, 20];

/** A small field hatched as a part of that standing is hatched on the drawing. */
export function hatchSwatch(standing: Standing): string {
  const pattern = hatchPattern(standing, 'hatch', 8, drawnIn.ink);
  const [tone, line] = isPale(standing) ? [drawnIn.paper, drawnIn.pale] : [drawnIn.tone, drawnIn.ink];
  const field = `x="0.5" y="0.5" width="${wide - 1}" height="${high - 1}"`;
  const hatch = pattern === '' ? '' : `<rect ${field} fill="url(#hatch)"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${wide} ${high}" width="${wide}" height="${high}"><defs>${pattern}</defs><rect ${field} fill="${tone}" stroke="${line}"/>${hatch}</svg>`;
}
