import type { Plate } from '../opinionDocument.ts';
import { type Paper, type PlateLayout, plateLayout } from './plateLayout.ts';
import { typstArray, typstMm, typstString } from './typstText.ts';

/** The pictures at hand by photo id, each as large as it came out of scaling. */
export type PicturesAtHand = ReadonlyMap<string, { widthPx: number; heightPx: number }>;

/** A plate as Typst source: the picture with its marks, its number, caption and what the marks show. */
export function typstPlate(plate: Plate, atHand: PicturesAtHand, paper: Paper): string {
  const picture = atHand.get(plate.photoId);
  const layout = plateLayout(picture ?? plate, paper);
  const marks = typstArray(
    plate.marks.map(
      (mark) =>
        `(number: ${mark.number}, kind: ${typstString(mark.kind)}, points: ${typstArray(mark.points.map((point) => placed(point, layout)))}, says: ${typstString(mark.says)})`,
    ),
  );
  return `#plate(number: ${plate.number}, path: ${picture !== undefined ? typstString(platePath(plate)) : 'none'}, alt: ${typstString(plate.alternative)}, caption: ${typstString(plate.caption)}, origin: ${typstString(plate.origin)}, width: ${typstMm(layout.widthMm)}, height: ${typstMm(layout.heightMm)}, beside: ${layout.beside}, marks: ${marks})`;
}

/** A plate within so many millimeters, as Typst source: picture and number alone, `none` where the picture is not at hand. */
export function smallPlate(
  plate: Plate,
  atHand: PicturesAtHand,
  mostWideMm: number,
  mostHighMm: number,
): string {
  const picture = atHand.get(plate.photoId);
  if (picture === undefined) return 'none';
  const widthMm = Math.min(mostWideMm, (mostHighMm * picture.widthPx) / picture.heightPx);
  const heightMm = (widthMm * picture.heightPx) / picture.widthPx;
  return `(number: ${plate.number}, path: ${typstString(platePath(plate))}, alt: ${typstString(plate.alternative)}, width: ${typstMm(widthMm)}, height: ${typstMm(heightMm)})`;
}

/** The name under which the page takes in a plate's picture. */
export function platePath(plate: Pick<Plate, 'number'>): string {
  return `/plates/${plate.number}.jpg`;
}

function placed([x, y]: readonly [number, number], { widthMm, heightMm }: PlateLayout): string {
  return `(${typstMm(x * widthMm)}, ${typstMm(y * heightMm)})`;
}
