import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Json } from '../../src/piece/event.ts';
import type { EventLog } from '../../src/record/eventLog.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { act, finding, opening, step } from '../kits/drafts.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const logs: [string, () => Promise<EventLog>][] = [
  ['in memory', async () => memoryLog()],
  ['on disk', async () => sqliteLog(join(await temporaryFolder(), 'record.db'))],
];

const example: Json = { id: 'example-side-chair', form: 'side-chair', example: true };

describe.each(logs)('a record %s', (_name, make) => {
  const openStore = async () => {
    const log = await make();
    onTestFinished(() => log.close());
    return { log, store: createStore(log, new Map([['example-side-chair', example]])) };
  };

  it('opens a piece and folds acts into it', async () => {
    const { store } = await openStore();
    expect(store.append([opening('one'), finding('one', 'saw', 'splat')]).ok).toBe(true);
    expect(store.piece('one')).toMatchObject({ seq: 2, canUndo: true, canRedo: false, readOnly: false });
    expect(Object.keys(store.piece('one')?.piece.findings ?? {})).toEqual(['saw@splat']);
  });

  it('writes down what stood there before', async () => {
    const { store } = await openStore();
    store.append([opening('one')]);
    store.append([
      act('one', 'piece-described', [{ path: ['title'], to: 'Another chair', from: 'a lie of the device' }]),
    ]);
    expect(store.history('one')[1]?.changes).toEqual([
      { path: ['title'], to: 'Another chair', from: 'A chair' },
    ]);
  });

  it('passes over an act it has already, and refuses another act under its id', async () => {
    const { store } = await openStore();
    const first = opening('one');
    const second = finding('one', 'saw', 'splat');
    expect(store.append([first, second, second]).ok).toBe(true);
    expect(store.append([second])).toEqual({ ok: true, value: { accepted: [second.id] } });
    expect(store.history('one')).toHaveLength(2);
    const other = store.append([{ ...second, who: 'another' }]);
    expect(other).toMatchObject({ ok: false, faults: [{ code: 'record.id-used' }] });
  });

  it('writes nothing of a batch in which one act does not fit', async () => {
    const { store } = await openStore();
    store.append([opening('one')]);
    const bad = act('one', 'finding-recorded', [
      { path: ['findings', 'x'], to: { id: 'x', sign: 'x', state: 'perhaps' } },
    ]);
    expect(store.append([finding('one', 'saw', 'splat'), bad])).toMatchObject({
      ok: false,
      faults: [{ code: 'record.does-not-fit', path: 'findings.x.state' }],
    });
    expect(store.history('one')).toHaveLength(1);
    expect(store.piece('one')?.piece.findings).toEqual({});
  });

  it.each([
    ['an act on a piece that was never opened', finding('two', 'saw', 'splat'), 'record.not-opened'],
    ['a piece opened twice', opening('one'), 'record.already-open'],
    [
      'an act that replaces the whole piece',
      act('one', 'piece-described', [{ path: [], to: { id: 'one', form: 'x' } }]),
      'record.not-the-whole',
    ],
    ['another id', act('one', 'piece-described', [{ path: ['id'], to: 'two' }]), 'record.fixed-place'],
    [
      'a piece made an example',
      act('one', 'piece-described', [{ path: ['example'], to: true }]),
      'record.fixed-place',
    ],
    [
      'a place that no piece has',
      act('one', 'piece-described', [{ path: ['insides'], to: 1 }]),
      'record.unknown-place',
    ],
    [
      'an undo handed in as an act',
      act('one', 'undo', [{ path: ['title'], to: '' }]),
      'record.undo-by-its-own-way',
    ],
    [
      'a finding under another key',
      act('one', 'finding-recorded', [
        { path: ['findings', 'a'], to: { id: 'b', sign: 'b', state: 'absent' } },
      ]),
      'record.key-and-id',
    ],
    [
      'a change to an example',
      act('example-side-chair', 'piece-described', [{ path: ['title'], to: 'Mine' }]),
      'record.example-is-read-only',
    ],
    [
      'a piece of mine opened as an example',
      act('three', 'piece-opened', [{ path: [], to: { id: 'three', form: 'x', example: true } }]),
      'record.not-an-example',
    ],
  ])('refuses %s', async (_what, draft, code) => {
    const { store } = await openStore();
    store.append([opening('one')]);
    const before = store.piece('one');
    expect(store.append([draft])).toMatchObject({ ok: false, faults: [{ code }] });
    expect(store.piece('one')).toEqual(before);
  });

  it('takes back and brings back, step by step, and a new act ends what could be brought back', async () => {
    const { store } = await openStore();
    store.append([opening('one'), finding('one', 'a', 'splat'), finding('one', 'b', 'splat')]);
    const found = () => Object.keys(store.piece('one')?.piece.findings ?? {});
    store.undo('one', step());
    expect(found()).toEqual(['a@splat']);
    store.undo('one', step());
    expect(found()).toEqual([]);
    expect(store.piece('one')).toMatchObject({ canUndo: false, canRedo: true });
    expect(store.undo('one', step())).toMatchObject({
      ok: false,
      faults: [{ code: 'record.nothing-to-undo' }],
    });
    store.redo('one', step());
    expect(found()).toEqual(['a@splat']);
    store.append([finding('one', 'c', 'splat')]);
    expect(store.redo('one', step())).toMatchObject({
      ok: false,
      faults: [{ code: 'record.nothing-to-redo' }],
    });
    expect(found()).toEqual(['a@splat', 'c@splat']);
    expect(store.history('one').map((event) => event.kind)).toEqual([
      'piece-opened',
      'finding-recorded',
      'finding-recorded',
      'undo',
      'undo',
      'redo',
      'finding-recorded',
    ]);
  });

  it('takes an undo once, however often it is asked for under one id', async () => {
    const { store } = await openStore();
    store.append([opening('one'), finding('one', 'a', 'splat'), finding('one', 'b', 'splat')]);
    const request = step();
    store.undo('one', request);
    expect(store.undo('one', request).ok).toBe(true);
    expect(Object.keys(store.piece('one')?.piece.findings ?? {})).toEqual(['a@splat']);
  });

  it('shows examples without any act, and lets them be put away and back', async () => {
    const { store } = await openStore();
    expect(store.piece('example-side-chair')).toMatchObject({
      readOnly: true,
      seq: 0,
      piece: { putAway: false },
    });
    expect(
      store.append([act('example-side-chair', 'piece-put-away', [{ path: ['putAway'], to: true }])]).ok,
    ).toBe(true);
    expect(store.piece('example-side-chair')?.piece.putAway).toBe(true);
    expect(store.pieces()).toEqual(['example-side-chair']);
  });

  it('knows the same after it is opened again', async () => {
    const { log, store } = await openStore();
    store.append([opening('one'), finding('one', 'a', 'splat'), finding('one', 'b', 'splat')]);
    store.undo('one', step());
    const again = createStore(log);
    expect(again.piece('one')).toEqual(store.piece('one'));
    expect(again.times('one')).toEqual(store.times('one'));
  });
});

describe('the record, by property', () => {
  it('comes back to every earlier document when all is taken back, and forward again', () => {
    const acts = fc.array(
      fc.tuple(fc.constantFrom('title', 'mode', 'startingOdds'), fc.constantFrom('in-hand', 'photo-only')),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(acts, (list) => {
        const store = createStore(memoryLog());
        store.append([opening('one')]);
        const seen = [store.piece('one')?.piece];
        for (const [place, to] of list) {
          store.append([act('one', 'piece-described', [{ path: [place], to }])]);
          seen.push(store.piece('one')?.piece);
        }
        for (let index = seen.length - 2; index >= 0; index--) {
          store.undo('one', step());
          expect(store.piece('one')?.piece).toEqual(seen[index]);
        }
        for (let index = 1; index < seen.length; index++) {
          store.redo('one', step());
          expect(store.piece('one')?.piece).toEqual(seen[index]);
        }
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });

  it('is the same whether acts come one by one or together, once or twice', () => {
    const signs = fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(signs, (list) => {
        const acts = [opening('one'), ...list.map((sign) => finding('one', sign, 'splat'))];
        const together = createStore(memoryLog());
        const apart = createStore(memoryLog());
        together.append(acts);
        for (const one of acts) {
          apart.append([one]);
          apart.append([one]);
        }
        expect(apart.piece('one')).toEqual(together.piece('one'));
        expect(apart.history('one')).toEqual(together.history('one'));
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });
});
