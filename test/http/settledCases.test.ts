import { expect, test } from 'vitest';
import { handKnowledge } from '../../src/evidence/testing/handKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { settledIn } from '../../src/learning/learnedKnowledge.ts';
import { reckonSettled } from '../../src/learning/runningScore.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { openSettledLearning, type SettledLearning } from '../../src/record/settledLearning.ts';
import { createStore } from '../../src/record/store.ts';
import { openJobs } from '../../src/server/jobs.ts';
import { settledPieces, tellingOfSettled } from '../../src/server/settledPieces.ts';
import { type SettledAnswer, settledRoutes } from '../../src/server/settledRoutes.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

// Of 40 period pieces in 100, 20 of 100 show the mark; of 30 bench copies 60, of 20 machine copies 50, of 10 fakes 30.
const base = handKnowledge({ mark: ['20, 10–30', '60, 50–70', '50, 40–60', '30, 20–40'] });
const at = '2026-03-01T10:00:00.000+00:00';
const by = { who: '', device: 'here', at };

/** A record of so many period pieces that show the mark, each settled on a document; and its learning. */
async function record(settled: number) {
  const file = `${await temporaryFolder()}/own-knowledge/settled.json`;
  const hold: { learning?: SettledLearning } = {};
  const store = tellingOfSettled(createStore(memoryLog()), () => hold.learning?.look());
  const changed: Knowledge[] = [];
  const open = () =>
    openSettledLearning(file, { base: () => base, settled: () => settledPieces(store) }, (each) =>
      changed.push(each),
    );
  const learning = open();
  hold.learning = learning;
  const act = (piece: string, kind: string, changes: object[]) => {
    const done = store.append([{ id: crypto.randomUUID(), piece, kind, changes, ...by }]);
    if (!done.ok) throw new Error(done.faults[0]?.message);
  };
  const settle = (piece: string) =>
    act(piece, 'case-settled', [
      {
        path: ['settled'],
        to: { by: 'document', making: 'of-the-period', on: '2026-03-01', rests: [], words: '' },
      },
    ]);
  const openPiece = (piece: string) =>
    act(piece, 'piece-opened', [
      {
        path: [],
        to: {
          id: piece,
          title: `Box ${piece}`,
          form: 'box',
          findings: { 'mark@board': { id: 'mark@board', sign: 'mark', part: 'board', state: 'present' } },
        },
      },
    ]);
  const ids = Array.from({ length: settled }, (_, index) => `p${String(index).padStart(2, '0')}`);
  for (const id of ids) {
    openPiece(id);
    settle(id);
  }
  const jobs = openJobs();
  const routes = settledRoutes(learning, {
    store,
    jobs,
    reckon: async ({ cases, knowledge }) => reckonSettled(cases, knowledge, 2026),
  });
  const ask = async (path: string, body?: object) => {
    const answer = await routes.request(path, {
      ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
    });
    return (await answer.json()) as SettledAnswer & { job: string; faults: { message: string }[] };
  };
  const reckon = async () => {
    const { job } = await ask('/reckon', {});
    await expect.poll(() => jobs.state(job)?.state).toBe('done');
    return ask('/');
  };
  return { store, learning, open, act, settle, openPiece, ask, reckon, changed };
}

test('six settled cases are not enough, and the switch says so', async () => {
  const { ask, reckon, learning } = await record(6);
  expect((await ask('/use', { on: true })).faults[0]?.message).toBe(
    'Reckon the settled cases first: something changed since.',
  );
  const { standing, cases } = await reckon();
  expect(standing.words).toContain('6 cases are settled; at least 10 are needed.');
  expect(cases.map(({ title, leftOut }) => [title, leftOut])).toContainEqual(['Box p00', false]);
  expect((await ask('/use', { on: true })).faults[0]?.message).toContain('at least 10 are needed');
  expect(learning.knowledge()).toBe(base);
});

test('learned figures are off until switched on, then weighed with, and kept over a start', async () => {
  const { ask, reckon, learning, open, changed } = await record(10);
  const reckoned = await reckon();
  expect(reckoned.standing.mayUse).toBe(true);
  // First by −log2 (8 / 39), the last with what nine cases taught.
  expect(reckoned.cases[0]?.fixedBits).toBeCloseTo(Math.log2(39 / 8), 6);
  expect(reckoned.cases[9]?.learnedBits).toBeLessThan(reckoned.cases[0]?.learnedBits ?? 0);
  expect(reckoned).toMatchObject({ on: false, inUse: false });
  expect(learning.knowledge()).toBe(base);
  expect(await ask('/use', { on: true })).toMatchObject({ on: true, inUse: true });
  expect(settledIn(learning.knowledge().version)).toBe(10);
  expect(changed.at(-1)).toBe(learning.knowledge());
  expect(open().knowledge().version).toBe(learning.knowledge().version);
  expect(await ask('/use', { on: false })).toMatchObject({ on: false, inUse: false });
  expect(learning.knowledge()).toBe(base);
});

test('whatever changes a case puts learned figures out of use until it is reckoned anew; undo brings them back', async () => {
  const { ask, reckon, learning, act, store, settle, openPiece } = await record(11);
  await reckon();
  await ask('/use', { on: true });
  const inUse = () => settledIn(learning.knowledge().version) > 0;
  expect(inUse()).toBe(true);
  const used = learning.knowledge().version;

  act('p03', 'settlement-withdrawn', [{ path: ['settled'] }]);
  expect(inUse()).toBe(false);
  expect(store.undo('p03', { ...by, id: crypto.randomUUID() }).ok).toBe(true);
  expect(learning.knowledge().version).toBe(used);

  act('p03', 'finding-withdrawn', [{ path: ['findings', 'mark@board'] }]);
  expect(inUse()).toBe(false);
  expect(store.undo('p03', { ...by, id: crypto.randomUUID() }).ok).toBe(true);

  openPiece('new');
  expect(inUse()).toBe(true);
  settle('new');
  expect(inUse()).toBe(false);
  expect((await ask('/')).isCurrent).toBe(false);
  await reckon();
  expect(inUse()).toBe(true);
  expect(learning.knowledge().signs.mark?.shows.period?.settled?.cases).toBe(12);
});

test('a case left out leaves nothing behind, and can be put back', async () => {
  const { ask, reckon, learning } = await record(12);
  await reckon();
  await ask('/use', { on: true });
  const cases = () => learning.knowledge().signs.mark?.shows.period?.settled?.cases;
  expect(cases()).toBe(12);
  const whole = learning.knowledge().version;
  await ask('/leave-out', { piece: 'p05', out: true });
  expect(cases()).toBeUndefined();
  const left = await reckon();
  expect(left.cases.find(({ piece }) => piece === 'p05')).toMatchObject({ leftOut: true });
  expect(cases()).toBe(11);
  await ask('/leave-out', { piece: 'p05', out: false });
  await reckon();
  expect(learning.knowledge().version).toBe(whole);
  expect((await ask('/leave-out', { piece: 'nowhere', out: true })).faults[0]?.message).toBe(
    'This piece is not a settled case.',
  );
});
