import { expect, it } from 'vitest';
import { takingTurns } from './turns.ts';

/** Work that ends when it is told to, and how many of it run. */
function works() {
  const run = { now: 0, most: 0, ends: [] as (() => void)[] };
  const work = async () => {
    run.now += 1;
    run.most = Math.max(run.most, run.now);
    await new Promise<void>((end) => run.ends.push(end));
    run.now -= 1;
  };
  return { run, work };
}

const settle = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

it('runs one at a time, first come first, and tells who waits how many are before it', async () => {
  const inTurn = takingTurns(1);
  const { run, work } = works();
  const told: string[] = [];
  const all = ['a', 'b', 'c'].map((name) =>
    inTurn(work, (ahead) => told.push(`${name} ${ahead}`)).then(() => told.push(`${name} done`)),
  );
  for (let turn = 0; turn < 3; turn++) {
    await settle();
    expect(run.now).toBe(1);
    run.ends.shift()?.();
  }
  await Promise.all(all);
  expect(run.most).toBe(1);
  expect(told).toEqual(['b 1', 'c 2', 'c 1', 'a done', 'b done', 'c done']);
});

it('goes on after work that failed', async () => {
  const inTurn = takingTurns(1);
  const failed = inTurn(async () => {
    throw new Error('no');
  });
  await expect(failed).rejects.toThrow('no');
  expect(await inTurn(async () => 'next')).toBe('next');
});
