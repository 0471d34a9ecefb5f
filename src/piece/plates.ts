import type { Photo } from './photo.ts';
import type { Piece } from './piece.ts';

/** A photo in its place among the plates, with the number it is printed under, and what it is called. */
export type Plated = {
  photo: Photo;
  /** Undefined where the photo is not printed. */
  plate: number | undefined;
  /** `Plate 3`, or `Photo not printed`; its caption or name is to stand beside it. */
  called: string;
};

/**
 * The photos of a piece in the order of the plates: screens and paper alike take their numbers from here. Those not yet in the
 * order come last, by id; a photo that is not printed keeps its place but has no number.
 */
export function platesOf(piece: Pick<Piece, 'photos' | 'plateOrder'>): Plated[] {
  const listed = [...new Set(piece.plateOrder)];
  const rest = Object.keys(piece.photos)
    .filter((id) => !listed.includes(id))
    .sort();
  let last = 0;
  return [...listed, ...rest].flatMap((id) => {
    const photo = piece.photos[id];
    if (photo === undefined) return [];
    const plate = photo.asPlate ? ++last : undefined;
    return [{ photo, plate, called: plate === undefined ? 'Photo not printed' : `Plate ${plate}` }];
  });
}
