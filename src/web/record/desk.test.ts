import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { piece as pieceSchema } from '../../piece/piece.ts';
import { actsAside } from './actsAside.ts';
import { openDesk } from './desk.ts';
import { memoryOutbox, type Outbox } from './outbox.ts';
import { type RehearsalServer, rehearsalServer } from './testing/rehearsalServer.ts';

const id = 'p1';
const fresh = pieceSchema.parse({ id, form: 'side-chair', title: 'Hall chair' });

function openTestDesk(server: RehearsalServer, outbox: Outbox, aside?: Storage) {
  const timers: (() => void)[] = [];
  const desk = openDesk({
    outbox: Promise.resolve(outbox),
    aside: actsAside(aside, 'tab-1', () => 0),
    server,
    lastRecord: { read: () => undefined, keep: () => {} },
    photos: { handOver: async () => ({ came: 'not-here' }) },
    identity: () => ({ who: 'A. Reader', device: 'Bench' }),
    now: () => '2026-11-25T10:00:00.000+00:00',
    freshId: () => crypto.randomUUID(),
    later: (_ms, act) => {
      timers.push(act);
      return () => timers.splice(timers.indexOf(act), 1);
    },
    alone: (work) => work(),
    tell: () => {},
  });
  return { desk, timers };
}

const settle = async () => {
  for (let turn = 0; turn < 60; turn += 1) await Promise.resolve();
};

const title = (text: string) => [{ path: ['title'], to: text }];

describe('the desk', () => {
  test('shows an act before the record has it, and hands it in', async () => {
    const server = rehearsalServer();
    const { desk } = openTestDesk(server, memoryOutbox());
    desk.watch(id, () => {});
    await settle();
    expect(desk.view(id).state).toBe('missing');
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    desk.record(id, 'piece-described', title('Dining chair'));
    expect(desk.view(id)).toMatchObject({ state: 'ready', saving: 'saving', waiting: 2, canUndo: true });
    expect(desk.view(id).piece?.title).toBe('Dining chair');
    await settle();
    expect(desk.view(id)).toMatchObject({ saving: 'saved', waiting: 0, seq: 2 });
    expect(desk.waiting()).toBe(0);
  });

  test('keeps acts while the record is away, in a desk closed and opened again, and hands them in once, in order', async () => {
    const server = rehearsalServer();
    const outbox = memoryOutbox();
    const first = openTestDesk(server, outbox);
    first.desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    server.away = true;
    for (const name of ['One', 'Two', 'Three']) first.desk.record(id, 'piece-described', title(name));
    first.desk.undo(id);
    await settle();
    expect(first.desk.view(id)).toMatchObject({ saving: 'waiting', waiting: 4 });
    expect(first.desk.view(id).piece?.title).toBe('Two');
    const waiting = first.desk.waitingIds();

    const second = openTestDesk(server, outbox);
    second.desk.watch(id, () => {});
    await settle();
    expect(second.desk.view(id).piece?.title).toBe('Two');
    server.away = false;
    second.desk.wake();
    await settle();
    expect(second.desk.view(id)).toMatchObject({ saving: 'saved', waiting: 0 });
    expect(second.desk.view(id).piece?.title).toBe('Two');
    expect(server.seen.slice(1)).toEqual(waiting);
    expect(await outbox.all()).toEqual([]);
  });

  test('an answer lost on the way back does no act twice', async () => {
    const server = rehearsalServer();
    const { desk, timers } = openTestDesk(server, memoryOutbox());
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    server.loseAnswers = 1;
    desk.record(id, 'piece-described', title('Again'));
    await settle();
    expect(desk.view(id).saving).toBe('waiting');
    timers.at(-1)?.();
    await settle();
    expect(desk.view(id)).toMatchObject({ saving: 'saved', seq: 2 });
  });

  test('a record that is only looked at takes nothing: what waits is kept and said, and handed in once it takes entries', async () => {
    const server = rehearsalServer();
    const { desk, timers } = openTestDesk(server, memoryOutbox());
    desk.watch(id, () => {});
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    server.readOnly = {
      code: 'asked',
      short: 'No.',
      words: 'Nothing can be entered.',
      instead: 'Start again.',
    };
    desk.record(id, 'piece-described', title('Made before the page knew'));
    await settle();
    expect(desk.above()).toMatchObject({ readOnly: { short: 'No.' }, waiting: 1 });
    desk.record(id, 'piece-described', title('Made after'));
    await settle();
    expect(desk.view(id)).toMatchObject({ waiting: 1, refusals: [] });
    expect(server.seen).toHaveLength(1);
    server.readOnly = null;
    timers.at(-1)?.();
    await settle();
    expect(desk.above()).toMatchObject({ readOnly: null, waiting: 0 });
    expect(desk.view(id).piece?.title).toBe('Made before the page knew');
    expect(server.seen).toHaveLength(2);
  });

  test('what waits when another record answers is kept, said, and handed in once its own is back', async () => {
    const server = rehearsalServer();
    const outbox = memoryOutbox();
    const { desk } = openTestDesk(server, outbox);
    desk.watch(id, () => {});
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    server.away = true;
    for (const name of ['One', 'Two', 'Three']) desk.record(id, 'piece-described', title(name));
    await settle();
    const other = rehearsalServer();
    other.recordId = 'r2';
    const stranger = openTestDesk(other, outbox);
    stranger.desk.watch(id, () => {});
    await settle();
    stranger.desk.wake();
    await settle();
    expect(other.seen).toEqual([]);
    expect(stranger.desk.above().elsewhere.acts.map(({ record }) => record)).toEqual(['r1', 'r1', 'r1']);
    expect(await outbox.all()).toHaveLength(3);
    const [waits] = stranger.desk.above().elsewhere.acts;
    expect(waits && (await stranger.desk.titleOf(waits))).toBe('Hall chair');

    // The page that is open may not hand in either, when another folder takes its server's place.
    server.away = false;
    server.recordId = 'r2';
    desk.wake();
    await settle();
    expect(desk.above().elsewhere.isOther).toBe(true);
    expect(server.seen).toHaveLength(1);
    server.recordId = 'r1';
    desk.wake();
    await settle();
    expect(desk.above().elsewhere.isOther).toBe(false);
    expect(desk.view(id)).toMatchObject({ saving: 'saved', waiting: 0 });
    expect(desk.view(id).piece?.title).toBe('Three');
    expect(await outbox.all()).toEqual([]);
  });

  test('an act on a piece that the record does not have is never dropped, and holds nothing up', async () => {
    const server = rehearsalServer();
    const outbox = memoryOutbox();
    // As browsers stored it before records had ids.
    await outbox.add(
      {
        type: 'event',
        piece: 'gone',
        event: {
          id: crypto.randomUUID(),
          piece: 'gone',
          kind: 'piece-described',
          changes: title('Lost?'),
          who: '',
          device: 'd',
          at: '2026-11-25T10:00:00.000+00:00',
        },
      },
      undefined,
    );
    const { desk } = openTestDesk(server, outbox);
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    expect(server.seen).toHaveLength(1);
    expect(desk.above().elsewhere.acts.map(({ act }) => act.piece)).toEqual(['gone']);
    expect(await outbox.all()).toHaveLength(1);
    await desk.forgetElsewhere(desk.above().elsewhere.acts);
    expect(desk.above().elsewhere.acts).toEqual([]);
    expect(await outbox.all()).toEqual([]);
  });

  test('an act is set aside in the moment it is made, and taken up by the next page of the tab', async () => {
    const server = rehearsalServer();
    const kept = new Map<string, string>();
    const store = {
      get length() {
        return kept.size;
      },
      key: (at: number) => [...kept.keys()][at] ?? null,
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, value: string) => void kept.set(name, value),
      removeItem: (name: string) => void kept.delete(name),
    } as Storage;
    const first = openTestDesk(server, memoryOutbox(), store);
    first.desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    expect(kept.size).toBe(0);
    // The page is gone before its store has answered.
    const stuck = { ...memoryOutbox(), lasting: true, add: () => new Promise<number>(() => {}) };
    const second = openTestDesk(server, stuck, store);
    await settle();
    second.desk.record(id, 'piece-described', title('Typed last'));
    expect(kept.size).toBe(1);
    await settle();
    const third = openTestDesk(server, memoryOutbox(), store);
    third.desk.watch(id, () => {});
    await settle();
    expect(third.desk.view(id)).toMatchObject({ saving: 'saved' });
    expect(third.desk.view(id).piece?.title).toBe('Typed last');
    expect(kept.size).toBe(0);
  });

  test('one refused act is said in words and does not hold up the others', async () => {
    const server = rehearsalServer();
    const { desk } = openTestDesk(server, memoryOutbox());
    desk.watch(id, () => {});
    server.refuse = (event) =>
      JSON.stringify(event.changes).includes('Bad') ? 'The record refuses this name.' : undefined;
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    desk.record(id, 'piece-described', title('Bad'));
    desk.record(id, 'piece-described', [{ path: ['mode'], to: 'photo-only' }]);
    await settle();
    expect(desk.view(id)).toMatchObject({ saving: 'saved', refusals: ['The record refuses this name.'] });
    expect(desk.view(id).piece).toMatchObject({ title: 'Hall chair', mode: 'photo-only' });
  });

  test('what makes no sense for a piece is refused here, with where', async () => {
    const server = rehearsalServer();
    const { desk } = openTestDesk(server, memoryOutbox());
    desk.watch(id, () => {});
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    desk.record(id, 'engagement-changed', [{ path: ['engagement', 'askedOn'], to: 'last spring' }]);
    expect(desk.view(id).refusals[0]).toContain('engagement › askedOn');
    expect(desk.waiting()).toBe(0);
  });

  test('an answer that comes late never puts an older state in place of a newer one', async () => {
    const server = rehearsalServer();
    const held: (() => void)[] = [];
    const read = server.read;
    server.read = async (asked, record) => {
      const answer = await read(asked, record);
      await new Promise<void>((go) => held.push(go));
      return answer;
    };
    const { desk } = openTestDesk(server, memoryOutbox());
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    desk.watch(id, () => {});
    await settle();
    desk.record(id, 'piece-described', title('Newer'));
    await settle();
    for (const go of held) go();
    await settle();
    expect(held.length).toBe(1);
    expect(desk.view(id).piece?.title).toBe('Newer');
  });

  test('an act that the record has just taken never goes out of sight, and another can build on it', async () => {
    const server = rehearsalServer();
    const outbox = memoryOutbox();
    const held: (() => void)[] = [];
    const slow: Outbox = {
      ...outbox,
      remove: async (places) => {
        await new Promise<void>((go) => held.push(go));
        await outbox.remove(places);
      },
    };
    const { desk } = openTestDesk(server, slow);
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    expect(held.length).toBe(1);
    desk.record(id, 'piece-described', title('Hall chair, turned over'));
    expect(desk.view(id)).toMatchObject({ state: 'ready', refusals: [], waiting: 1 });
    for (let turn = 0; turn < 3; turn += 1) {
      for (const go of held.splice(0)) go();
      await settle();
    }
    expect(desk.view(id).piece?.title).toBe('Hall chair, turned over');
    expect(server.seen.length).toBe(2);
  });

  test('an act that another tab handed in stays in sight until the record has told of it', async () => {
    const server = rehearsalServer();
    const outbox = memoryOutbox();
    const { desk } = openTestDesk(server, outbox);
    desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
    await settle();
    server.away = true;
    desk.record(id, 'piece-described', title('Handed in by another tab'));
    await settle();
    const [waiting] = await outbox.all();
    if (waiting?.act.type !== 'event') throw new Error('nothing waits');
    server.away = false;
    await server.record(id, [waiting.act.event], 'r1');
    await outbox.remove([waiting.place]);
    const read = server.read;
    const held: (() => void)[] = [];
    server.read = async (asked, record) => {
      await new Promise<void>((go) => held.push(go));
      return read(asked, record);
    };
    const titles = new Set<string | undefined>();
    desk.watch(id, () => titles.add(desk.view(id).piece?.title));
    desk.wake();
    await settle();
    expect(held.length).toBeGreaterThan(0);
    expect(desk.view(id).piece?.title).toBe('Handed in by another tab');
    desk.record(id, 'piece-described', [{ path: ['openedOn'], to: '2026-03-01' }]);
    for (let turn = 0; turn < 4; turn += 1) {
      for (const go of held.splice(0)) go();
      await settle();
    }
    expect(desk.view(id)).toMatchObject({
      waiting: 0,
      piece: { title: 'Handed in by another tab', openedOn: '2026-03-01' },
    });
    expect([...titles]).not.toContain('Hall chair');
  });

  test('whatever is done, undone and redone while the record comes and goes, desk and record agree at the end', async () => {
    const step = fc.oneof(
      fc.record({ do: fc.constant('write' as const), text: fc.string({ maxLength: 6 }) }),
      fc.record({
        do: fc.constantFrom(
          'undo' as const,
          'redo' as const,
          'away' as const,
          'back' as const,
          'look' as const,
        ),
      }),
      fc.record({ do: fc.constant('lose' as const) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 25 }), async (steps) => {
        const server = rehearsalServer();
        const { desk } = openTestDesk(server, memoryOutbox());
        desk.watch(id, () => {});
        desk.record(id, 'piece-opened', [{ path: [], to: JSON.parse(JSON.stringify(fresh)) }]);
        await settle();
        for (const one of steps) {
          if (one.do === 'write') desk.record(id, 'piece-described', title(one.text));
          if (one.do === 'undo') desk.undo(id);
          if (one.do === 'redo') desk.redo(id);
          if (one.do === 'look') desk.hear(id);
          if (one.do === 'away') server.away = true;
          if (one.do === 'back') server.away = false;
          if (one.do === 'lose') server.loseAnswers = 1;
          if (one.do !== 'look') await settle();
        }
        server.away = false;
        server.loseAnswers = 0;
        desk.wake();
        await settle();
        await settle();
        const asked = await server.read(id, undefined);
        expect(desk.waiting()).toBe(0);
        const there = asked.came === 'answer' ? asked.answer.piece : undefined;
        const here = desk.view(id).piece;
        expect(here === undefined ? undefined : { ...here }).toEqual(
          there === undefined ? undefined : pieceSchema.parse(there),
        );
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});
