import { describe, expect, it } from 'vitest';
import type { EventLog } from '../../src/record/eventLog.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { finding, opening, step } from '../kits/drafts.ts';
import { testApp } from '../kits/testApp.ts';

/** A log that counts how many events were read from it. */
function counted(log: EventLog) {
  const read = { events: 0, most: 0 };
  const counting: EventLog = {
    ...log,
    ofPiece(piece, part) {
      const found = log.ofPiece(piece, part);
      read.events += found.length;
      read.most = Math.max(read.most, found.length);
      return found;
    },
  };
  return { log: counting, read };
}

const acts = 2300;

function filled(log: EventLog) {
  const store = createStore(log);
  store.append([opening('one')]);
  for (let n = 0; n < acts; n += 575)
    expect(
      store.append(Array.from({ length: 575 }, (_, at) => finding('one', `sign-${n + at}`, 'top'))).ok,
    ).toBe(true);
  return log;
}

describe.each([
  ['in memory', () => memoryLog()],
  ['on disk', () => sqliteLog(':memory:')],
])('a piece with many acts, %s', (_where, open) => {
  it('is read once, in slices between which others are answered, and not again for any later question', async () => {
    const { log, read } = counted(filled(open()));
    const store = createStore(log);
    const pauses = { count: 0 };
    const pause = async () => {
      pauses.count += 1;
    };
    await Promise.all([store.load('one', pause), store.load('one', pause)]);
    expect(read).toEqual({ events: acts + 1, most: 500 });
    expect(pauses.count).toBe(4);
    expect(Object.keys(store.piece('one')?.piece.findings ?? {})).toHaveLength(acts);
    store.append([finding('one', 'another', 'top')]);
    store.undo('one', step());
    expect(store.piece('one')?.seq).toBe(acts + 3);
    expect(store.times('one').lastAt).toBeDefined();
    expect(read.events).toBe(acts + 1);
  });

  it('comes to the same when acts are handed in while it is being read', async () => {
    const log = filled(open());
    const store = createStore(log);
    const turn = { count: 0 };
    await store.load('one', async () => {
      turn.count += 1;
      if (turn.count === 2) store.append([finding('one', 'meanwhile', 'top')]);
    });
    expect(store.piece('one')).toEqual(createStore(log).piece('one'));
    expect(Object.keys(store.piece('one')?.piece.findings ?? {})).toContain('meanwhile@top');
  });

  it('gives its history by pages that together are the whole, and reads no more than a page', () => {
    const { log, read } = counted(filled(open()));
    const store = createStore(log);
    const whole = store.history('one').map((event) => event.id);
    const found: string[] = [];
    read.most = 0;
    for (let before: number | undefined, turn = 0; turn < 20; turn++) {
      const page = store.historyPage('one', before === undefined ? { most: 200 } : { most: 200, before });
      expect(page.total).toBe(acts + 1);
      found.unshift(...page.events.map((event) => event.id));
      before = page.older;
      if (before === undefined) break;
    }
    expect(found).toEqual(whole);
    expect(read.most).toBe(200);
  });
});

describe('over HTTP', () => {
  it('reads a piece in once for every address under it, and its history by pages', async () => {
    const { store, get } = await testApp();
    const loaded: string[] = [];
    const { load } = store;
    store.load = (id, pause) => {
      loaded.push(id);
      return load(id, pause);
    };
    store.append([opening('one'), finding('one', 'a', 'top'), finding('one', 'b', 'top')]);
    await get('/api/pieces/one');
    await get('/api/pieces/one/history');
    await get('/api/pieces');
    expect(loaded).toEqual(['one', 'one', 'one']);
    const last = await (await get('/api/pieces/one/history?most=2')).json();
    expect(last).toMatchObject({ total: 3, events: [{ seq: 2 }, { seq: 3 }] });
    const first = await (await get(`/api/pieces/one/history?most=2&before=${last.older}`)).json();
    expect(first).toMatchObject({ total: 3, events: [{ kind: 'piece-opened' }] });
    for (const odd of ['most=0', 'most=x', 'before=2', 'most=5&before=-1', 'most=99999'])
      expect((await get(`/api/pieces/one/history?${odd}`)).status).toBe(422);
  });
});
