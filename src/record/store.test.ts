import { describe, expect, it } from 'vitest';
import { act, finding, opening, step } from '../../test/kits/drafts.ts';
import type { DraftEvent, Json } from '../piece/event.ts';
import type { ForeignActs } from './adoptActs.ts';
import { chainStart, hashEvent } from './chain.ts';
import { DamagedPiece } from './damagedPiece.ts';
import type { EventLog } from './eventLog.ts';
import { memoryLog } from './memoryLog.ts';
import { createStore, type RecordStore } from './store.ts';

const example: Json = { id: 'example-chair', form: 'side-chair', example: true };
const bases = new Map([['example-chair', example]]);
const titled = (to: Json, more: Partial<DraftEvent> = {}) =>
  act('one', 'piece-described', [{ path: ['title'], to }], more);

function opened(log: EventLog = memoryLog(), ...acts: DraftEvent[]) {
  const store = createStore(log, bases);
  expect(store.append([opening('one'), ...acts]).ok).toBe(true);
  return store;
}

const refused = (code: string, message: string, path = '') => ({
  ok: false,
  faults: [{ code, path, message }],
});
const idUsed = (id: string) =>
  refused(
    'record.id-used',
    `The act ${id} is in the record already, and says something else: give the new act an id of its own.`,
    'id',
  );
const title = (store: RecordStore) => store.piece('one')?.piece.title;

describe('acts handed in', () => {
  it('are answered for by their ids, also those that are there already', () => {
    const first = opening('one');
    const second = titled('A');
    const store = createStore(memoryLog());
    expect(store.append([first, second, second])).toEqual({
      ok: true,
      value: { accepted: [first.id, second.id, second.id] },
    });
    expect(store.append([second])).toEqual({ ok: true, value: { accepted: [second.id] } });
    expect(store.history('one')).toHaveLength(2);
    expect(store.find(second.id)).toMatchObject({ seq: 2, kind: 'piece-described' });
    expect(store.append([])).toMatchObject({ ok: false, faults: [{ code: 'record.no-events' }] });
  });

  it.each([
    ['piece', { piece: 'two' }],
    ['kind', { kind: 'part-described' as const }],
    ['name', { who: 'Somebody else' }],
    ['device', { device: 'laptop' }],
    ['moment', { at: '2026-11-25T10:16:00.000+01:00' }],
    ['place', { changes: [{ path: ['mode'], to: 'A' }] }],
    ['value', { changes: [{ path: ['title'], to: 'B' }] }],
  ])('are another act under one id where the %s differs', (_what, other) => {
    const second = titled('A');
    const store = opened(memoryLog(), second);
    expect(store.append([{ ...second, ...other }])).toEqual(idUsed(second.id));
    const fresh = titled('A');
    expect(store.append([fresh, { ...fresh, ...other }])).toEqual(idUsed(fresh.id));
  });

  it('are one act whatever each says stood there before', () => {
    const second = titled('A');
    const store = opened(memoryLog(), second);
    expect(store.append([{ ...second, changes: [{ path: ['title'], to: 'A', from: 'x' }] }]).ok).toBe(true);
  });

  it('are refused with the number of the act that is at fault', () => {
    const store = opened();
    const wrong = act('one', 'piece-described', [{ path: ['id'], to: 'two' }]);
    expect(store.append([titled('A'), wrong])).toEqual(
      refused('record.fixed-place', '"id" of a piece never changes.', 'events.1.changes.0.path'),
    );
    expect(title(store)).toBe('A chair');
  });

  it('may open a piece and go on with it, and open none twice', () => {
    const store = createStore(memoryLog());
    const odd = act('one', 'piece-described', [{ path: ['id'], to: 'two' }]);
    expect(store.append([opening('one'), odd])).toMatchObject({
      ok: false,
      faults: [{ code: 'record.fixed-place' }],
    });
    expect(store.append([opening('one'), opening('one')])).toEqual(
      refused('record.already-open', 'A piece of this name is in the record already.', 'events.1.piece'),
    );
    const nothing = act('one', 'piece-opened', [{ path: [] }]);
    expect(store.append([nothing, titled('A')])).toMatchObject({
      ok: false,
      faults: [
        { code: 'record.does-not-fit', path: 'id' },
        { code: 'record.does-not-fit', path: 'form' },
      ],
    });
    expect(store.pieces()).toEqual([]);
  });

  it('stand on one chain for each device, and have their places over all pieces', () => {
    const store = createStore(memoryLog());
    store.append([opening('one')]);
    store.append([
      opening('two', { device: 'laptop' }),
      titled('A', { device: 'laptop' }),
      finding('one', 'a', 'splat'),
      finding('two', 'b', 'splat', { device: 'laptop' }),
    ]);
    const [first, second, third] = store.history('one');
    const [other, last] = store.history('two');
    expect([first, third].map((event) => event?.seq)).toEqual([1, 2]);
    expect([other, second, last].map((event) => event?.seq)).toEqual([1, 2, 3]);
    expect([first?.before, other?.before]).toEqual([chainStart.hash, chainStart.hash]);
    expect([third?.before, second?.before, last?.before]).toEqual([first?.hash, other?.hash, second?.hash]);
    for (const event of [first, second, third, other, last])
      expect(event && hashEvent(event)).toBe(event?.hash);
    expect([store.piece('one')?.seq, store.piece('two')?.seq]).toEqual([4, 5]);
    expect(store.head().count).toBe(5);
    expect([store.piece('one')?.count, store.piece('two')?.count]).toEqual([3, 2]);
  });

  it('keep what their device showed where another value stood', () => {
    const store = opened(memoryLog(), titled('A'));
    store.append([act('one', 'piece-described', [{ path: ['title'], to: 'B', saw: { value: 'A chair' } }])]);
    const [open] = store.piece('one')?.overwritten ?? [];
    expect(open).toMatchObject({ path: ['title'], earlier: 'A', later: 'B' });
    // Handed in together with another act, it is settled all the same.
    const settling = act('one', 'overwrite-settled', [{ path: ['title'], to: 'A' }], { of: open?.act ?? '' });
    expect(store.append([finding('one', 'a', 'splat'), settling]).ok).toBe(true);
    expect(store.piece('one')?.overwritten).toEqual([]);
    store.undo('one', step());
    store.undo('one', step());
    // Taken back and brought back, it is told once, by the act that did it.
    store.undo('one', step());
    expect(store.piece('one')?.overwritten).toEqual([]);
    store.redo('one', step());
    expect(store.piece('one')?.overwritten).toHaveLength(1);
    expect(store.history('one').at(-1)?.changes).toStrictEqual([{ path: ['title'], to: 'B', from: 'A' }]);
  });
});

describe('a log that can’t be written', () => {
  const failing = (error: unknown) => {
    const log = memoryLog();
    const store = opened(log);
    log.append = () => {
      throw error;
    };
    return store;
  };

  it('is said, and nothing is remembered of the act', () => {
    const store = failing(new Error('the disk is gone'));
    expect(store.append([titled('A')])).toEqual(
      refused(
        'record.could-not-write',
        'The record could not be written (the disk is gone): nothing was changed.',
      ),
    );
    expect(title(store)).toBe('A chair');
    expect(store.piece('one')).toMatchObject({ count: 1, canUndo: false });
  });

  it('for want of room is said by itself', () => {
    const store = failing(Object.assign(new Error('full'), { code: 'SQLITE_FULL' }));
    expect(store.append([titled('A')])).toEqual(
      refused(
        'record.disk-full',
        'The disk is full, and nothing was written: free some space and try again.',
      ),
    );
  });
});

describe('taking back and bringing back', () => {
  it('is refused in words where there is nothing', () => {
    const store = opened();
    expect(store.undo('one', step())).toEqual(
      refused('record.nothing-to-undo', 'There is nothing left to take back.'),
    );
    expect(store.redo('one', step())).toEqual(
      refused('record.nothing-to-redo', 'There is nothing to bring back.'),
    );
  });

  it('says whose act it takes, and when and where it was made', () => {
    const store = opened(memoryLog(), titled('A'));
    const [, made] = store.history('one');
    store.undo('one', step());
    const back = step({ who: 'Ann', device: 'laptop' });
    store.redo('one', back);
    expect(store.history('one').map(({ kind, of }) => [kind, of])).toEqual([
      ['piece-opened', undefined],
      ['piece-described', undefined],
      ['undo', made?.id],
      ['redo', made?.id],
    ]);
    expect(store.find(back.id)).toMatchObject({ ...back, piece: 'one' });
  });

  it('is refused where another act than the one meant came between, with whose it is', () => {
    const mine = titled('A');
    const store = opened(memoryLog(), mine, titled('B', { device: 'laptop', who: '' }));
    const between = (words: string, made: string) =>
      refused(
        'record.not-the-last',
        `Nothing was ${words}: meanwhile another act came between, made ${made} at 10:15. Look at the piece as it is now, and press again if you still want it.`,
      );
    expect(store.undo('one', { ...step(), of: mine.id })).toEqual(between('taken back', 'on laptop'));
    store.undo('one', step());
    store.undo('one', step());
    // The next to be brought back is A; B was meant.
    expect(store.redo('one', { ...step(), of: step().id })).toEqual(
      between('brought back', 'by Perrin Halloway (invented) on tablet-1'),
    );
    expect(store.redo('one', { ...step(), of: mine.id }).ok).toBe(true);
    expect(title(store)).toBe('A');
  });

  it('is done once under one id, and not under the id of another act', () => {
    const store = opened(memoryLog(), titled('A'), titled('B'), opening('two'), finding('two', 'a', 'splat'));
    const once = step();
    expect(store.undo('one', once)).toEqual({ ok: true, value: undefined });
    expect(store.undo('one', once)).toEqual({ ok: true, value: undefined });
    expect(title(store)).toBe('A');
    expect(store.redo('one', once)).toEqual(idUsed(once.id));
    expect(store.undo('two', once)).toEqual(idUsed(once.id));
    expect(title(store)).toBe('A');
  });

  it('is refused where the request is none', () => {
    const store = opened(memoryLog(), titled('A'));
    expect(store.undo('one', step({ device: 'a\nb' }))).toMatchObject({
      ok: false,
      faults: [{ code: 'record.bad-id' }],
    });
    expect(title(store)).toBe('A');
  });
});

describe('a signature', () => {
  const hash = 'a'.repeat(64);
  const revision = {
    revision: 1,
    by: 'Ann',
    on: '2026-11-25',
    at: '2026-11-25T10:00:00.000+01:00',
    isNew: '',
    why: '',
    manifestSha256: hash,
    pdfSha256: hash,
    documentSha256: hash,
    head: hash,
    count: 1,
    programVersion: '1',
    knowledgeVersion: '1',
    knowledgeSha256: hash,
  };
  const signing = (piece = 'one') =>
    act(piece, 'opinion-issued', [
      { path: ['opinion', 'status'], to: 'signed' },
      { path: ['issued', '1'], to: revision },
    ]);

  it('is recorded where the piece stands as it was signed, once', () => {
    const store = opened(memoryLog(), titled('A'));
    const signed = signing();
    const movedOn = refused(
      'record.moved-on',
      'The piece was changed while it was being signed, so nothing was signed: look at it once more, and sign again.',
    );
    expect(store.issue(signed, 1)).toEqual(movedOn);
    expect(store.piece('one')?.piece.issued).toEqual({});
    expect(store.issue(signed, 2)).toEqual({ ok: true, value: undefined });
    expect(store.issue(signed, 2)).toEqual({ ok: true, value: undefined });
    expect(Object.keys(store.piece('one')?.piece.issued ?? {})).toEqual(['1']);
    expect(store.history('one')).toHaveLength(3);
    expect(store.issue({ ...signed, who: 'Somebody else' }, 3)).toEqual(idUsed(signed.id));
    expect(store.issue('a letter', 3)).toMatchObject({
      ok: false,
      faults: [{ code: 'record.not-an-event' }],
    });
    expect(store.issue(signing('example-chair'), 0)).toEqual(movedOn);
  });

  it('is where undo stops, and says so', () => {
    const store = opened(memoryLog(), titled('A'));
    store.issue(signing(), 2);
    expect(store.piece('one')).toMatchObject({ canUndo: false, undoStopsAt: 'signature' });
    expect(store.undo('one', step())).toEqual(
      refused(
        'record.nothing-to-undo',
        'Undo stops at a signature: what was signed stays signed. Begin a new revision to change it.',
      ),
    );
    expect(store.redo('one', step())).toEqual(
      refused('record.nothing-to-redo', 'There is nothing to bring back.'),
    );
  });
});

describe('acts brought in from another record', () => {
  const from = (store: RecordStore, more: Partial<ForeignActs> = {}): ForeignActs => ({
    piece: 'one',
    record: store.recordId,
    acts: store.history('one'),
    issued: new Map(),
    ...more,
  });

  it('are told of first, and then come in with what they were there', () => {
    const theirs = opened(memoryLog(), titled('A'));
    const store = createStore(memoryLog());
    const told = { ok: true, value: { added: 2, known: 0, remarks: [] } };
    expect(store.adopt(from(theirs), true)).toEqual(told);
    expect(store.pieces()).toEqual([]);
    expect(store.adopt(from(theirs), false)).toEqual(told);
    expect(title(store)).toBe('A');
    expect(store.history('one').map((event) => event.origin?.record)).toEqual([
      theirs.recordId,
      theirs.recordId,
    ]);
    expect(store.adopt(from(theirs), false)).toEqual({
      ok: true,
      value: { added: 0, known: 2, remarks: [] },
    });
    expect(store.history('one')).toHaveLength(2);
    expect(store.adopt(from(theirs, { acts: ['x'] }), false)).toMatchObject({
      ok: false,
      faults: [{ code: 'adopt.not-an-act' }],
    });
  });

  it('are told of where the chain of a device went on in two records', () => {
    const log = memoryLog();
    const store = opened(log);
    const theirs = createStore(memoryLog());
    theirs.append(store.history('one').map(({ seq: _s, before: _b, hash: _h, ...draft }) => draft));
    theirs.append([titled('A')]);
    store.append([opening('two')]);
    const told = store.adopt(from(theirs), true);
    expect(told.ok && told.value.remarks).toHaveLength(1);
  });

  it('are refused for an example, and where an act is another piece’s here', () => {
    const theirs = opened(memoryLog(), titled('A'));
    const store = createStore(memoryLog(), bases);
    expect(store.adopt(from(theirs, { piece: 'example-chair' }), false)).toEqual(
      refused('record.example-is-read-only', 'The worked examples stay as they are.', 'piece'),
    );
    const [, second] = theirs.history('one');
    store.append([opening('two')]);
    store.append([finding('two', 'a', 'splat', { id: second?.id ?? '' })]);
    expect(store.adopt(from(theirs), false)).toEqual(idUsed(second?.id ?? ''));
  });

  it('are not said to be in where they could not be written', () => {
    const log = memoryLog();
    const store = createStore(log);
    log.append = () => {
      throw new Error('gone');
    };
    expect(store.adopt(from(opened()), false)).toMatchObject({
      ok: false,
      faults: [{ code: 'record.could-not-write' }],
    });
  });
});

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
