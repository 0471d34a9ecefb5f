import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from '../../src/piece/event.ts';
import { canonicalJson } from '../../src/record/canonicalJson.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { createStore } from '../../src/record/store.ts';
import { pieceRoutes } from '../../src/server/pieceRoutes.ts';
import { recordRoutes } from '../../src/server/recordRoutes.ts';
import { actsAside } from '../../src/web/record/actsAside.ts';
import { type Desk, openDesk } from '../../src/web/record/desk.ts';
import { memoryOutbox } from '../../src/web/record/outbox.ts';
import { pieceServer } from '../../src/web/record/pieceServer.ts';
import { act, finding, opening, step } from '../kits/drafts.ts';

const places = ['title', 'client'] as const;
type Place = (typeof places)[number];
const pathOf = { title: ['title'], client: ['engagement', 'client'] } as const;

/** A record over HTTP in this process, and desks of devices that can lose sight of it. */
async function twoDevices(devices: readonly string[]) {
  const store = createStore(memoryLog());
  store.append([opening('one')]);
  const routes = pieceRoutes(store, undefined as never);
  const record = recordRoutes(store, { status: async () => ({}) } as never);
  const away = new Set<number>();
  /** What each act's device showed in its place when the act was made. */
  const shown = new Map<string, Json | undefined>();
  const desks = devices.map((device, index) =>
    openDesk({
      outbox: Promise.resolve(memoryOutbox()),
      aside: actsAside(undefined, device, () => 0),
      server: pieceServer(async (path, init) => {
        if (away.has(index)) throw new TypeError('away');
        const at = String(path);
        const [app, rest] = at.startsWith('/api/record')
          ? [record, '/']
          : [routes, at.slice('/api/pieces'.length)];
        return app.request(`http://127.0.0.1${rest}`, init);
      }),
      lastRecord: { read: () => undefined, keep: () => {} },
      photos: { handOver: async () => ({ came: 'not-here' }) },
      identity: () => ({ who: '', device }),
      now: () => '2026-11-25T10:00:00.000+00:00',
      freshId: () => randomUUID(),
      later: () => () => {},
      alone: (work) => work(),
      tell: () => {},
    }),
  );
  for (const desk of desks) desk.watch('one', () => {});
  await settle();
  return { store, desks, away, shown };
}

const settle = () => new Promise<void>((resolve) => setTimeout(resolve, 4));

const standing = (desk: Desk, place: Place): Json | undefined => {
  const { piece } = desk.view('one');
  return place === 'title' ? piece?.title : piece?.engagement.client;
};

const step1 = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constant('write' as const),
      by: fc.nat(1),
      place: fc.constantFrom(...places),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constantFrom('undo' as const, 'redo' as const), by: fc.nat(1) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constantFrom('away' as const, 'back' as const), by: fc.nat(1) }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('settle' as const), by: fc.nat(1) }) },
);

describe.each([
  ['two devices', ['tablet-1', 'laptop-2']],
  ['two tabs of one browser', ['tablet-1', 'tablet-1']],
])('%s', (_what, devices) => {
  it('come to the same piece in whatever order their acts arrive, and every value written over unseen is told', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step1, { minLength: 4, maxLength: 16 }), async (steps) => {
        const { store, desks, away, shown } = await twoDevices(devices);
        const counter = { texts: 0 };
        const settled = new Set<string>();
        for (const one of steps) {
          const desk = desks[one.by] as Desk;
          const before = new Set(desk.waitingIds());
          if (one.do === 'write') {
            const saw = standing(desk, one.place);
            const kind = one.place === 'title' ? 'piece-described' : 'engagement-changed';
            desk.record('one', kind, [{ path: [...pathOf[one.place]], to: `text ${++counter.texts}` }]);
            for (const id of desk.waitingIds()) if (!before.has(id)) shown.set(id, saw);
          }
          if (one.do === 'undo') desk.undo('one');
          if (one.do === 'redo') desk.redo('one');
          if (one.do === 'away') away.add(one.by);
          if (one.do === 'back') {
            away.delete(one.by);
            desk.wake();
          }
          const [open] = desk.view('one').overwritten;
          if (one.do === 'settle' && open !== undefined) {
            const to = open.earlier;
            desk.record(
              'one',
              'overwrite-settled',
              [{ path: open.path, ...(to === undefined ? {} : { to }) }],
              open.act,
            );
            settled.add(`${open.act} ${open.path}`);
          }
          await settle();
        }
        away.clear();
        for (let turn = 0; turn < 3; turn++) {
          for (const desk of desks) desk.wake();
          await settle();
        }
        const there = store.piece('one');
        for (const desk of desks) {
          expect(desk.waiting()).toBe(0);
          expect(desk.view('one').piece).toEqual(there?.piece);
        }
        expectAllTold(
          store.history('one'),
          shown,
          desks.map((desk) => desk.view('one').overwritten),
          settled,
        );
      }),
      { seed: 11, numRuns: 25 },
    );
  }, 60_000);

  it('take nothing of each other’s back in silence: the first press says whose act it is', async () => {
    const { store, desks } = await twoDevices(devices);
    const [a, b] = desks as [Desk, Desk];
    a.record('one', 'piece-described', [{ path: ['title'], to: 'of A' }]);
    await settle();
    b.wake();
    await settle();
    b.record('one', 'engagement-changed', [{ path: ['engagement', 'client'], to: 'of B' }]);
    await settle();
    // A has not heard of it: its own act is meant, and another stands last.
    a.undo('one');
    await settle();
    expect(store.piece('one')?.piece).toMatchObject({ title: 'of A', engagement: { client: 'of B' } });
    expect(a.view('one').refusals[0]).toMatch(/another act came between, made on/);
    a.undo('one');
    await settle();
    expect(store.piece('one')?.piece.engagement.client).toBe('of B');
    expect(a.view('one').refusals[1]).toMatch(/the last act was made on .*, not here\. Press Undo once more/);
    a.undo('one');
    await settle();
    expect(store.piece('one')?.piece).toMatchObject({ title: 'of A', engagement: { client: '' } });
  });
});

/** What the acts show to have been written over unseen must wait for an examiner, or have been settled by one. */
function expectAllTold(
  history: ReturnType<ReturnType<typeof createStore>['history']>,
  shown: ReadonlyMap<string, Json | undefined>,
  told: readonly (readonly { act: string; path: string[]; earlier?: Json; later?: Json }[])[],
  settled: ReadonlySet<string>,
): void {
  const takenBack = new Set<string>();
  for (const { kind, of } of history) {
    if (kind === 'undo') takenBack.add(of ?? '');
    if (kind === 'redo') takenBack.delete(of ?? '');
  }
  const settledThere = history.filter((one) => one.kind === 'overwrite-settled' && !takenBack.has(one.id));
  const lost = history.flatMap((event) => {
    const [change] = event.changes;
    if (change === undefined || !shown.has(event.id) || takenBack.has(event.id)) return [];
    const saw = shown.get(event.id) ?? '';
    if (canonicalJson(saw) === canonicalJson(change.from ?? '') || change.from === change.to) return [];
    const isSettled = settledThere.some(
      (one) => one.of === event.id && one.changes.some(({ path }) => `${path}` === `${change.path}`),
    );
    if (isSettled) expect(settled).toContain(`${event.id} ${change.path}`);
    return isSettled ? [] : [{ act: event.id, path: change.path, later: change.to }];
  });
  for (const list of told) {
    expect(list.map(({ act: id, path, later }) => ({ act: id, path, later }))).toEqual(lost);
    for (const one of list) {
      const event = history.find(({ id }) => id === one.act);
      expect(one.earlier).toEqual(event?.changes[0]?.from);
    }
  }
}

describe('a value written over unseen', () => {
  const store = () => {
    const made = createStore(memoryLog());
    made.append([opening('one')]);
    made.append([act('one', 'piece-described', [{ path: ['title'], to: 'of A' }])]);
    return made;
  };
  const over = (saw: { value?: Json }) =>
    act('one', 'piece-described', [{ path: ['title'], to: 'of B', saw }], { device: 'laptop-2' });

  it('is told with both values, and settled by one act that names it', () => {
    const made = store();
    const event = over({ value: 'A chair' });
    made.append([event]);
    const [open] = made.piece('one')?.overwritten ?? [];
    expect(open).toMatchObject({
      act: event.id,
      path: ['title'],
      earlier: 'of A',
      later: 'of B',
      device: 'laptop-2',
    });
    const settling = (to: string) =>
      act('one', 'overwrite-settled', [{ path: ['title'], to }], { of: event.id });
    expect(
      made.append([act('one', 'overwrite-settled', [{ path: ['mode'], to: 'in-hand' }], { of: event.id })]),
    ).toMatchObject({
      ok: false,
      faults: [{ code: 'record.nothing-to-settle' }],
    });
    expect(made.append([settling('of A')]).ok).toBe(true);
    expect(made.piece('one')).toMatchObject({ piece: { title: 'of A' }, overwritten: [] });
    expect(made.append([settling('of B')])).toMatchObject({
      ok: false,
      faults: [{ code: 'record.nothing-to-settle' }],
    });
    made.undo('one', step());
    expect(made.piece('one')?.overwritten).toHaveLength(1);
    made.redo('one', step());
    expect(made.piece('one')?.overwritten).toEqual([]);
  });

  it('is none where the device saw what stood there, where the same was written, or where it was taken back', () => {
    const made = store();
    made.append([over({ value: 'of A' })]);
    expect(made.piece('one')?.overwritten).toEqual([]);
    expect(made.history('one').at(-1)?.changes[0]).not.toHaveProperty('saw');
    made.append([act('one', 'piece-described', [{ path: ['title'], to: 'of B', saw: { value: 'x' } }])]);
    expect(made.piece('one')?.overwritten).toEqual([]);
    made.append([act('one', 'piece-described', [{ path: ['title'], to: 'C', saw: { value: 'x' } }])]);
    expect(made.piece('one')?.overwritten).toHaveLength(1);
    made.undo('one', step());
    expect(made.piece('one')?.overwritten).toEqual([]);
    made.redo('one', step());
    expect(made.piece('one')?.overwritten).toHaveLength(1);
  });

  it('is told of a finding that was withdrawn meanwhile, and stays told after the record is opened again', () => {
    const log = memoryLog();
    const made = createStore(log);
    const found = finding('one', 'saw', 'top');
    made.append([opening('one'), found]);
    made.append([act('one', 'finding-withdrawn', [{ path: ['findings', 'saw@top'] }])]);
    const to = { id: 'saw@top', sign: 'saw', part: 'top', state: 'absent' };
    made.append([
      act('one', 'finding-recorded', [
        { path: ['findings', 'saw@top'], to, saw: { value: found.changes[0]?.to ?? null } },
      ]),
    ]);
    const told = createStore(log).piece('one')?.overwritten;
    expect(told).toEqual(made.piece('one')?.overwritten);
    expect(told).toMatchObject([{ later: { state: 'absent' } }]);
    expect(told?.[0]).not.toHaveProperty('earlier');
  });
});
