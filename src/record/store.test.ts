import { describe, expect, it } from 'vitest';
import { act, finding, opening, step } from '../../test/kits/drafts.ts';
import type { ForeignActs } from './adoptActs.ts';
import { chainStart, hashEvent } from './chain.ts';
import { memoryLog } from './memoryLog.ts';
import { createStore, type RecordStore } from './store.ts';
import { bases, idUsed, opened, refused, title, titled } from './testing/openedStore.ts';

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
