import { expect, it } from 'vitest';
import type { Steps } from '../../ground/steps.ts';
import { newestOnly } from './newestOnly.ts';

/** Work that takes its time in every step, and tells how many it has done. */
function* work(done: string[], name: string, steps: number): Steps<string> {
  for (let n = 0; n < steps; n++) {
    done.push(name);
    const until = performance.now() + 6;
    while (performance.now() < until);
    yield;
  }
  return `${name} is weighed`;
}

it('gives the answer of work that nothing newer came before', async () => {
  const done: string[] = [];
  expect(await newestOnly()(work(done, 'a', 3))).toBe('a is weighed');
  expect(done).toEqual(['a', 'a', 'a']);
});

it('drops work at its next step when newer comes, and begins none that newer came before already', async () => {
  const done: string[] = [];
  const drive = newestOnly();
  const first = drive(work(done, 'a', 1000));
  await expect.poll(() => done.length).toBeGreaterThan(2);
  const [second, third] = [drive(work(done, 'b', 1000)), drive(work(done, 'c', 2))];
  const before = done.length;
  expect(await Promise.all([first, second, third])).toEqual([undefined, undefined, 'c is weighed']);
  expect(done.slice(before)).toEqual(['c', 'c']);
});
