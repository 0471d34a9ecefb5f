import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { piece as pieceSchema } from '../../piece/piece.ts';
import { openDesk } from './desk.ts';
import { memoryOutbox, type Outbox } from './outbox.ts';
import { type RehearsalServer, rehearsalServer } from './testing/rehearsalServer.ts';

const id = 'p1';
const fresh = pieceSchema.parse({ id, form: 'side-chair', title: 'Hall chair' });

function openTestDesk(server: RehearsalServer, outbox: Outbox) {
  const timers: (() => void)[] = [];
  const desk = openDesk({
    outbox: Promise.resolve(outbox),
    server,
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
    server.read = async (asked) => {
      const answer = await read(asked);
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
        const asked = await server.read(id);
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
