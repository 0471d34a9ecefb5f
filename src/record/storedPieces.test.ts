import { describe, expect, it } from 'vitest';
import { act, opening, step } from '../../test/kits/drafts.ts';
import type { DraftEvent } from '../piece/event.ts';
import { DamagedPiece } from './damagedPiece.ts';
import { memoryLog } from './memoryLog.ts';
import { createStore } from './store.ts';
import { bases, opened, title, titled } from './testing/openedStore.ts';

describe('a piece as the record has it', () => {
  it('says what can be taken back and brought back, and whose that is', () => {
    const [a, b] = [titled('A', { who: 'Ann' }), titled('B', { device: 'laptop' })];
    const store = opened(memoryLog(), a, b);
    const mark = ({ id, who, device, at }: DraftEvent) => ({ id, who, device, at });
    expect(store.piece('one')).toMatchObject({ canUndo: true, canRedo: false, readOnly: false });
    expect(store.piece('one')?.undoes).toStrictEqual(mark(b));
    expect(store.piece('one')).not.toHaveProperty('redoes');
    expect(store.piece('one')).not.toHaveProperty('undoStopsAt');
    store.undo('one', step());
    expect(store.piece('one')?.undoes).toStrictEqual(mark(a));
    expect(store.piece('one')?.redoes).toStrictEqual(mark(b));
    expect(store.piece('one')).toMatchObject({ canUndo: true, canRedo: true });
    store.undo('one', step());
    expect(store.piece('one')).toMatchObject({ canUndo: false, canRedo: true, undoStopsAt: 'opening' });
    expect(store.piece('one')).not.toHaveProperty('undoes');
  });

  it('is nothing where it is not there, and is asked for anew each time', () => {
    const log = memoryLog();
    const [here, beside] = [createStore(log), createStore(log)];
    expect(here.piece('one')).toBeUndefined();
    expect(here.document('one')).toBeUndefined();
    expect(here.times('one')).toEqual({ firstAt: undefined, lastAt: undefined });
    beside.append([opening('one')]);
    expect(title(here)).toBe('A chair');
  });

  it('is read once, however often it is asked for', () => {
    const log = memoryLog();
    opened(log, titled('A'));
    const asked = { times: 0 };
    const { ofPiece } = log;
    log.ofPiece = (...of) => {
      asked.times += 1;
      return ofPiece(...of);
    };
    const store = createStore(log);
    const first = store.piece('one')?.piece;
    expect(store.piece('one')?.piece).toBe(first);
    expect(first?.title).toBe('A');
    expect(asked.times).toBe(1);
    expect(store.document('one')).toEqual({ id: 'one', form: 'side-chair', title: 'A' });
  });

  it('knows when its first and last act were made', () => {
    const later = '2026-11-26T09:00:00.000+01:00';
    const store = opened(memoryLog(), titled('A', { at: later }));
    expect(store.times('one')).toEqual({ firstAt: '2026-11-25T10:15:00.000+01:00', lastAt: later });
  });

  it('may be an example: it is listed first, once, and is read-only', () => {
    const store = opened();
    const away = act('example-chair', 'piece-put-away', [{ path: ['putAway'], to: true }]);
    expect(store.append([away]).ok).toBe(true);
    expect(store.pieces()).toEqual(['example-chair', 'one']);
    expect(store.piece('example-chair')).toMatchObject({ readOnly: true, piece: { putAway: true } });
    const mine = act('example-chair', 'piece-described', [{ path: ['title'], to: 'Mine' }]);
    expect(store.append([mine])).toMatchObject({
      ok: false,
      faults: [{ code: 'record.example-is-read-only' }],
    });
  });

  it('that is damaged closes no other', async () => {
    const log = memoryLog();
    opened(log, opening('two'));
    const { ofPiece } = log;
    log.ofPiece = (piece, part) => {
      if (piece === 'one') throw new Error('torn');
      return ofPiece(piece, part);
    };
    const store = createStore(log);
    expect(() => store.piece('one')).toThrow(DamagedPiece);
    expect(() => store.history('one')).toThrow(DamagedPiece);
    expect(() => store.historyPage('one', { most: 1 })).toThrow(DamagedPiece);
    await expect(store.load('one')).rejects.toThrow(DamagedPiece);
    expect(store.piece('two')?.piece.id).toBe('two');
    const unread = createStore(memoryLog(), new Map([['odd', { id: 'odd', form: 7 }]]));
    expect(() => unread.piece('odd')).toThrow(DamagedPiece);
  });

  it('gives its history by pages', () => {
    const store = opened(memoryLog(), opening('two'), titled('A'), titled('B'));
    const kinds = (page: { before?: number; most: number }) => {
      const { events, total, older } = store.historyPage('one', page);
      return [events.map(({ seq }) => seq), total, older];
    };
    expect(kinds({ most: 2 })).toEqual([[3, 4], 3, 3]);
    expect(kinds({ most: 2, before: 3 })).toEqual([[1], 3, undefined]);
    expect(kinds({ most: 3 })).toEqual([[1, 3, 4], 3, 1]);
    expect(kinds({ most: 4 })).toEqual([[1, 3, 4], 3, undefined]);
    expect(kinds({ most: 2, before: 1 })).toEqual([[], 3, undefined]);
  });

  it('is of the record that its log keeps', () => {
    const log = memoryLog();
    const closed = { times: 0 };
    log.close = () => {
      closed.times += 1;
    };
    const store = opened(log);
    expect(store.recordId).toBe(log.recordId);
    expect(store.head()).toEqual(log.recordHead());
    store.close();
    expect(closed.times).toBe(1);
  });
});

describe('reading a piece in', () => {
  /** A log of one piece with so many acts, that says what was asked of it. */
  const withActs = (count: number) => {
    const log = memoryLog();
    opened(log, ...Array.from({ length: count - 1 }, (_, n) => titled(`Title ${n}`)));
    const asked: unknown[] = [];
    const { ofPiece } = log;
    log.ofPiece = (piece, part) => {
      asked.push(part);
      return ofPiece(piece, part);
    };
    return { store: createStore(log, bases), asked };
  };

  it.each([
    [499, [0], 0],
    [500, [0, 500], 1],
    [501, [0, 500], 1],
  ])('of %i acts is done in slices of 500, with a pause between two', async (count, after, pauses) => {
    const { store, asked } = withActs(count);
    const paused = { times: 0 };
    await store.load('one', async () => {
      paused.times += 1;
    });
    expect(asked).toEqual(after.map((each) => ({ after: each, most: 500 })));
    expect(paused.times).toBe(pauses);
    expect(title(store)).toBe(`Title ${count - 2}`);
    expect(store.piece('one')?.seq).toBe(count);
    await store.load('one');
    expect(asked).toHaveLength(after.length);
  });

  it('is done once for all who ask meanwhile, lets others be answered, and ends where it was read meanwhile', async () => {
    const { store, asked } = withActs(501);
    const answered = { others: false };
    setImmediate(() => {
      answered.others = true;
    });
    await Promise.all([store.load('one'), store.load('one')]);
    expect(asked).toHaveLength(2);
    expect(answered.others).toBe(true);
    const another = withActs(1000);
    const turns = { count: 0 };
    await another.store.load('one', async () => {
      turns.count += 1;
      another.store.piece('one');
    });
    expect(turns.count).toBe(1);
    expect(another.asked).toEqual([{ after: 0, most: 500 }, undefined]);
  });

  it('can be asked for again after it went wrong, and of an example or of nothing', async () => {
    const log = memoryLog();
    opened(log);
    const { ofPiece } = log;
    log.ofPiece = () => {
      throw new Error('for a moment');
    };
    const store = createStore(log, bases);
    await expect(store.load('one')).rejects.toThrow(DamagedPiece);
    log.ofPiece = ofPiece;
    await store.load('one');
    expect(title(store)).toBe('A chair');
    await store.load('example-chair');
    expect(store.piece('example-chair')?.piece.example).toBe(true);
    await store.load('none');
    store.append([opening('none')]);
    expect(store.piece('none')?.seq).toBe(2);
  });
});
