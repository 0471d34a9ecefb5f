import { describe, expect, it } from 'vitest';
import { draftEvent, eventOrigin } from './event.ts';

const draft = {
  id: '6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b01',
  piece: 'one',
  kind: 'piece-described',
  changes: [{ path: ['title'], to: 'A chair' }],
  who: 'Perrin Halloway (invented)',
  device: 'tablet-1',
  at: '2026-11-25T10:15:00.000+01:00',
};
const reads = (more: object) => draftEvent.safeParse({ ...draft, ...more }).success;
const change = (one: object) => reads({ changes: [one] });

/** Every kind that a record of ours can hold: a record with one that is not read any more would be closed. */
const kinds = [
  'piece-opened piece-described piece-put-away engagement-changed part-described finding-recorded',
  'finding-withdrawn observation-recorded observation-withdrawn looked-over measure-recorded case-settled settlement-withdrawn',
  'measure-withdrawn photo-added photo-described photo-withdrawn mark-drawn mark-withdrawn bench-recorded',
  'bench-withdrawn opinion-changed opinion-signed overwrite-settled opinion-issued revision-begun undo redo',
].flatMap((line) => line.split(' '));

describe('an act as a device hands it in', () => {
  it('is read as it is, and was made by nobody named where no name is given', () => {
    expect(draftEvent.parse(draft)).toStrictEqual(draft);
    const { who: _who, ...unnamed } = draft;
    expect(draftEvent.parse(unnamed)).toStrictEqual({ ...draft, who: '' });
  });

  it.each(kinds)('may be of the kind %s', (kind) => {
    expect(reads({ kind })).toBe(true);
  });

  it('is of no other kind, and has no field that the record would not keep', () => {
    expect(reads({ kind: 'piece-burned' })).toBe(false);
    expect(reads({ kind: '' })).toBe(false);
    expect(reads({ seq: 1 })).toBe(false);
  });

  it('has an id, a piece, a device and a moment with its zone, of the lengths that fit', () => {
    expect(reads({ id: 'one' })).toBe(false);
    expect(reads({ piece: '' })).toBe(false);
    expect(reads({ piece: 'p' })).toBe(true);
    expect(reads({ piece: 'p'.repeat(80) })).toBe(true);
    expect(reads({ piece: 'p'.repeat(81) })).toBe(false);
    expect(reads({ who: 'w'.repeat(200) })).toBe(true);
    expect(reads({ who: 'w'.repeat(201) })).toBe(false);
    expect(reads({ device: 'd'.repeat(200) })).toBe(true);
    expect(reads({ device: 'd'.repeat(201) })).toBe(false);
    expect(reads({ at: '2026-11-25T10:15:00Z' })).toBe(true);
    expect(reads({ at: '2026-11-25T10:15:00' })).toBe(false);
    expect(reads({ at: 'this morning' })).toBe(false);
    expect(reads({ of: draft.id })).toBe(true);
    expect(reads({ of: 'the last' })).toBe(false);
  });

  it('changes at least one place, no deeper than six names', () => {
    expect(reads({ changes: [] })).toBe(false);
    expect(reads({ changes: [...draft.changes, ...draft.changes] })).toBe(true);
    const names = (count: number) => Array.from({ length: count }, () => 'a');
    expect(change({ path: names(6) })).toBe(true);
    expect(change({ path: names(7) })).toBe(false);
    expect(change({ path: [1] })).toBe(false);
    expect(change({ to: 'x' })).toBe(false);
  });

  it('says what it sets, what stood there and what the device showed, as JSON and nothing else', () => {
    const whole = { path: ['title'], to: [1, null, { a: true }], from: 'x', saw: { value: 'y' } };
    expect(draftEvent.parse({ ...draft, changes: [whole] }).changes).toStrictEqual([whole]);
    expect(change({ path: [], saw: {} })).toBe(true);
    expect(change({ path: [], to: new Date(0) })).toBe(false);
    expect(change({ path: [], saw: { value: 'y', more: 1 } })).toBe(false);
    expect(change({ path: [], was: 'x' })).toBe(false);
  });
});

describe('where an act stood in another record', () => {
  const origin = { record: 'theirs', seq: 1, before: '0'.repeat(64), hash: '9af'.padEnd(64, '0') };
  const stood = (more: object) => eventOrigin.safeParse({ ...origin, ...more }).success;

  it('is that record, its number there from 1, and two hashes of SHA-256 as 64 small hexadecimal digits', () => {
    expect(eventOrigin.parse(origin)).toStrictEqual(origin);
    expect(stood({ record: 'r'.repeat(80) })).toBe(true);
    expect(stood({ record: 'r'.repeat(81) })).toBe(false);
    expect(stood({ seq: 0 })).toBe(false);
    expect(stood({ seq: 1.5 })).toBe(false);
    for (const hash of [
      '0'.repeat(63),
      '0'.repeat(65),
      'F'.repeat(64),
      ` ${'0'.repeat(64)}`,
      'g'.repeat(64),
      `${'0'.repeat(64)}x`,
    ]) {
      expect(stood({ before: hash })).toBe(false);
      expect(stood({ hash })).toBe(false);
    }
    expect(stood({ more: 1 })).toBe(false);
  });
});
