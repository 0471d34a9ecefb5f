import type { Photo, PhotoMark } from '../../../piece/photo.ts';
import type { BoardMark, MarkKind, Wanted } from '../../board/boardMark.ts';
import { type Marks, useMarks } from '../../board/useMarks.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { drawMark, nextNumber, withdrawMark } from './photoActs.ts';
import { inPixels, inShares } from './photoPlaces.ts';

/** How each kind of mark of a photo is set at the board. */
const setAs = { point: 'point', line: 'line', outline: 'polygon' } as const satisfies Record<
  PhotoMark['kind'],
  MarkKind
>;

/** The marks of a photo at the board: each change is an act of the record, and undone as every act is. */
export function usePhotoMarks(context: ExaminationContext, photo: Photo): Marks {
  const before = (id: string) => photo.marks.find((each) => each.id === id);
  return useMarks({
    list: photo.marks.map(
      (mark): BoardMark => ({
        id: mark.id,
        name: `mark ${mark.number}`,
        number: mark.number,
        kind: setAs[mark.kind],
        points: inPixels(mark.points, photo),
      }),
    ),
    stand({ id, kind, points }) {
      const number = nextNumber(photo);
      const called = kind === 'polygon' ? 'outline' : kind === 'line' ? 'line' : 'point';
      context.record(
        drawMark(photo, { id, number, kind: called, points: inShares(points, photo), words: '' }),
      );
    },
    change(id, points) {
      const mark = before(id);
      if (mark !== undefined) context.record(drawMark(photo, { ...mark, points: inShares(points, photo) }));
    },
    take: (id) => context.record(withdrawMark(photo, id)),
  });
}

/** A mark of a kind to be set next. */
export function newMark(photo: Photo, kind: PhotoMark['kind']): Wanted {
  return { id: crypto.randomUUID(), name: `mark ${nextNumber(photo)}`, kind: setAs[kind] };
}
