import type { Json } from '../../../piece/event.ts';
import type { Photo, PhotoMark } from '../../../piece/photo.ts';
import type { Piece } from '../../../piece/piece.ts';
import { platesOf } from '../../../piece/plates.ts';
import type { Belongs } from '../../offline/photos/heldPhoto.ts';
import type { TakenPhoto } from '../../offline/photos/photoKeeper.ts';
import type { Act } from '../answerSign.ts';

type Pictured = Pick<Piece, 'photos' | 'plateOrder' | 'findings' | 'observations'>;

/** The id a photo has within a piece: the same bytes are one photo. */
export function photoIdOf(sha256: string): string {
  return `photo-${sha256.slice(0, 16)}`;
}

/** The act of adding a kept photo as the last plate, tied to its part and to what it shows. */
export function addPhoto(piece: Pictured, keptPhoto: TakenPhoto, name: string, belongs: Belongs): Act {
  const id = photoIdOf(keptPhoto.sha256);
  const { note: _unsaid, ...known } = keptPhoto;
  const part = belongs.part === undefined ? {} : { part: belongs.part };
  const added: Photo = {
    id,
    name,
    ...known,
    caption: '',
    alternative: '',
    asPlate: true,
    marks: [],
    ...part,
  };
  const before = piece.photos[id];
  const changes = before === undefined ? [{ path: ['photos', id], to: clean(added) }] : [];
  const order = piece.plateOrder.includes(id)
    ? []
    : [{ path: ['plateOrder'], to: [...piece.plateOrder, id] as Json }];
  const shown: { place: string; one: { id: string; photos: string[] } | undefined }[] = [
    { place: 'findings', one: piece.findings[belongs.finding ?? ''] },
    { place: 'observations', one: piece.observations[belongs.observation ?? ''] },
  ];
  const tied = shown.flatMap(({ place, one }) =>
    one === undefined || one.photos.includes(id) ? [] : [photosOf(place, one, [...one.photos, id])],
  );
  return { kind: 'photo-added', changes: [...changes, ...order, ...tied] };
}

/** The act of taking a photo out of the piece; its bytes stay in the record and undo brings it back. */
export function withdrawPhoto(piece: Pictured, id: string): Act {
  const without = (photos: string[]) => photos.filter((each) => each !== id);
  const untied = (['findings', 'observations'] as const).flatMap((place) =>
    Object.values<{ id: string; photos: string[] }>(piece[place]).flatMap((one) =>
      one.photos.includes(id) ? [photosOf(place, one, without(one.photos))] : [],
    ),
  );
  const order = { path: ['plateOrder'], to: piece.plateOrder.filter((each) => each !== id) as Json };
  return { kind: 'photo-withdrawn', changes: [...untied, order, { path: ['photos', id] }] };
}

/** The act of describing a photo: its caption, its words for a reader who cannot see it, its part, whether it is a plate. */
export function describePhoto(
  id: string,
  told: Partial<Pick<Photo, 'caption' | 'alternative' | 'part' | 'asPlate'>>,
): Act {
  const changes = Object.entries(told).map(([name, to]) =>
    to === undefined ? { path: ['photos', id, name] } : { path: ['photos', id, name], to: to as Json },
  );
  return { kind: 'photo-described', changes };
}

/** The act of moving a plate by so many places, held within the ends. */
export function movePlate(piece: Pictured, id: string, by: number): Act {
  const order = platesOf(piece).map(({ photo }) => photo.id);
  const from = order.indexOf(id);
  const to = Math.max(0, Math.min(order.length - 1, from + by));
  const without = order.filter((each) => each !== id);
  return {
    kind: 'photo-described',
    changes: [{ path: ['plateOrder'], to: without.toSpliced(to, 0, id) as Json }],
  };
}

/** The act of drawing a mark or changing one: a mark of the same id is replaced. */
export function drawMark(photo: Photo, mark: PhotoMark): Act {
  const known = photo.marks.some((each) => each.id === mark.id);
  const marks = known
    ? photo.marks.map((each) => (each.id === mark.id ? mark : each))
    : [...photo.marks, mark];
  return { kind: 'mark-drawn', changes: [marksChange(photo, marks)] };
}

/** The act of taking a mark off; the others keep their numbers, since words may speak of them. */
export function withdrawMark(photo: Photo, id: string): Act {
  return {
    kind: 'mark-withdrawn',
    changes: [
      marksChange(
        photo,
        photo.marks.filter((mark) => mark.id !== id),
      ),
    ],
  };
}

/** The number the next mark gets: one above the highest. */
export function nextNumber(photo: Photo): number {
  return Math.max(0, ...photo.marks.map((mark) => mark.number)) + 1;
}

function marksChange(photo: Photo, marks: PhotoMark[]) {
  return { path: ['photos', photo.id, 'marks'], to: marks.map(clean) as Json };
}

function photosOf(place: string, { id }: { id: string }, photos: string[]) {
  return { path: [place, id, 'photos'], to: photos as Json };
}

/** Without places that hold nothing: JSON has no undefined. */
function clean(value: object): Json {
  return JSON.parse(JSON.stringify(value));
}
