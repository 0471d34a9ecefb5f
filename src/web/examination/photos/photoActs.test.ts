import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from '../../../piece/event.ts';
import { foldEvents, invertChanges, withBefore } from '../../../piece/fold.ts';
import { expectedAtFirst } from '../../../piece/observationWords.ts';
import { type Photo, type PhotoMark, photo } from '../../../piece/photo.ts';
import { platesOf } from '../../../piece/plates.ts';
import {
  addPhoto,
  drawMark,
  movePlate,
  nextNumber,
  photoIdOf,
  withdrawMark,
  withdrawPhoto,
} from './photoActs.ts';

const kept = (digit: string) => ({
  sha256: digit.repeat(64),
  mediaType: 'image/jpeg' as const,
  bytes: 10,
  widthPx: 4,
  heightPx: 3,
});
const finding = {
  id: 'arcs@splat',
  sign: 'arcs',
  part: 'splat',
  state: 'present' as const,
  sure: 'plain' as const,
  inPhotoOnly: false,
  words: '',
  photos: [],
};
const observation = {
  id: 'own-1',
  words: 'The rail was cut down.',
  expected: expectedAtFirst,
  photos: [] as string[],
};
const empty = {
  photos: {},
  plateOrder: [],
  findings: { [finding.id]: finding },
  observations: { [observation.id]: observation },
};
type Pictured = {
  photos: Record<string, Photo>;
  plateOrder: string[];
  findings: Record<string, typeof finding>;
  observations: Record<string, typeof observation>;
};
const done = (state: Pictured, act: { changes: { path: string[]; to?: Json }[] }) =>
  foldEvents(state as unknown as Json, [act]) as unknown as Pictured;

describe('photos of a piece', () => {
  it('adds a photo as the last plate, tied to part and finding', () => {
    const one = done(empty, addPhoto(empty, kept('a'), 'splat.jpg', { part: 'splat', finding: finding.id }));
    const id = photoIdOf('a'.repeat(64));
    expect(photo.parse(one.photos[id])).toMatchObject({ name: 'splat.jpg', part: 'splat', asPlate: true });
    expect(one.plateOrder).toEqual([id]);
    expect(one.findings[finding.id]?.photos).toEqual([id]);
  });

  it('ties a photo to an observation of one’s own, and withdrawing it unties it there too', () => {
    const act = addPhoto(empty, kept('a'), 'rail.jpg', { observation: observation.id });
    const one = done(empty, act);
    const id = photoIdOf('a'.repeat(64));
    expect(one.observations[observation.id]?.photos).toEqual([id]);
    expect(one.findings[finding.id]?.photos).toEqual([]);
    expect(done(one, withdrawPhoto(one, id))).toEqual(empty);
  });

  it('takes the same bytes for the same photo', () => {
    const one = done(empty, addPhoto(empty, kept('a'), 'a.jpg', {}));
    const two = addPhoto(one, kept('a'), 'again.jpg', {});
    expect(two.changes).toEqual([]);
  });

  it('withdraws a photo from plates and findings, and the inverse brings all back', () => {
    const one = done(empty, addPhoto(empty, kept('a'), 'a.jpg', { finding: finding.id }));
    const act = withdrawPhoto(one, photoIdOf('a'.repeat(64)));
    const made = withBefore(one as unknown as Json, act.changes);
    const gone = done(one, { changes: made });
    expect(gone).toEqual(empty);
    expect(done(gone, { changes: invertChanges(made) })).toEqual(one);
  });

  it('keeps every plate whatever is moved where (property)', () => {
    let state: Pictured = empty;
    for (const digit of 'abcde') state = done(state, addPhoto(state, kept(digit), `${digit}.jpg`, {}));
    const ids = platesOf(state).map((each) => each.photo.id);
    fc.assert(
      fc.property(fc.constantFrom(...ids), fc.integer({ min: -7, max: 7 }), (id, by) => {
        const moved = platesOf(done(state, movePlate(state, id, by))).map((each) => each.photo.id);
        expect(moved.toSorted()).toEqual(ids.toSorted());
        expect(moved.indexOf(id)).toBe(Math.max(0, Math.min(4, ids.indexOf(id) + by)));
      }),
      { seed: 3 },
    );
  });
});

describe('marks on a photo', () => {
  const plate = photo.parse({ id: 'p', name: 'p.jpg', ...kept('a') });
  const mark: PhotoMark = { id: 'm1', number: 1, kind: 'point', points: [[0.5, 0.25]], words: '' };

  it('numbers marks on, and keeps the numbers of those that stay', () => {
    const one = { ...plate, marks: [mark, { ...mark, id: 'm2', number: 2 }] };
    const left = withdrawMark(one, 'm1').changes[0]?.to as unknown as PhotoMark[];
    expect(left.map((each) => each.number)).toEqual([2]);
    expect(nextNumber({ ...one, marks: left })).toBe(3);
  });

  it('changes a mark of the same id in its place', () => {
    const one = { ...plate, marks: [mark, { ...mark, id: 'm2', number: 2 }] };
    const changed = drawMark(one, { ...mark, words: 'dowel end' }).changes[0]?.to as unknown as PhotoMark[];
    expect(changed.map((each) => [each.id, each.words])).toEqual([
      ['m1', 'dowel end'],
      ['m2', ''],
    ]);
  });
});
