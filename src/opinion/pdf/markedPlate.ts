import sharp from 'sharp';
import { type OpinionDocument, type Plate, platesIn } from '../opinionDocument.ts';
import type { ScaledPlates } from './setPages.ts';

/** Pictures with their marks drawn in, by the SHA-256 of the photo. */
export type MarkedPlates = ReadonlyMap<string, { jpeg: Buffer; widthPx: number; heightPx: number }>;

/** The plates of a document with their numbered marks drawn into the picture, for papers that can't lay one over the other. */
export async function markedPlates(document: OpinionDocument, scaled: ScaledPlates): Promise<MarkedPlates> {
  const marked = await Promise.all(
    platesIn(document).map(async (plate) => {
      const picture = scaled.get(plate.photoId);
      if (picture === undefined) return [];
      const { jpeg, widthPx, heightPx } = picture;
      const drawn =
        plate.marks.length === 0
          ? jpeg
          : await sharp(jpeg)
              .composite([{ input: Buffer.from(marksSvg(plate, widthPx, heightPx)) }])
              .jpeg({ quality: 86 })
              .toBuffer();
      return [[plate.sha256, { jpeg: drawn, widthPx, heightPx }] as const];
    }),
  );
  return new Map(marked.flat());
}

/** The marks of a plate as a picture to lay over it, in its own pixels. */
export function marksSvg({ marks }: Pick<Plate, 'marks'>, widthPx: number, heightPx: number): string {
  const unit = Math.max(widthPx, heightPx) / 100;
  const drawn = marks.map(({ number, kind, points }) => {
    const at = points.map(([x, y]) => [x * widthPx, y * heightPx] as const);
    const [x, y] = at[0] ?? [0, 0];
    const path = at.map(([px, py]) => `${px},${py}`).join(' ');
    const shape = (width: number, color: string) =>
      kind === 'point'
        ? `<circle cx="${x}" cy="${y}" r="${1.7 * unit}" fill="none" stroke="${color}" stroke-width="${width}"/>`
        : `<${kind === 'line' ? 'polyline' : 'polygon'} points="${path}" fill="none" stroke="${color}" stroke-width="${width}"/>`;
    const within = (value: number, most: number) => Math.max(1.6 * unit, Math.min(value, most - 1.6 * unit));
    const [dx, dy] = [within(x + 3 * unit, widthPx), within(y - 3 * unit, heightPx)];
    return `${shape(0.9 * unit, '#ffffff')}${shape(0.4 * unit, '#a8321c')}<circle cx="${dx}" cy="${dy}" r="${1.5 * unit}" fill="#ffffff" stroke="#2b2622" stroke-width="${0.25 * unit}"/><text x="${dx}" y="${dy + 0.65 * unit}" text-anchor="middle" font-family="sans-serif" font-weight="700" font-size="${1.9 * unit}" fill="#2b2622">${number}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}">${drawn.join('')}</svg>`;
}
