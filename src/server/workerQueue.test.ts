import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openWorkerQueue } from './workerQueue.ts';

/** A thread that throws outside its answer for "die", is gone without a word for "leave", and else says the word again. */
const thread = `
import { parentPort } from 'node:worker_threads';
parentPort.on('message', ({ ask, question }) => {
  if (question === 'die') throw new Error('It broke.');
  if (question === 'leave') process.exit(3);
  if (question === 'refuse') parentPort.postMessage({ ask, failed: 'Not so.' });
  else setTimeout(() => parentPort.postMessage({ ask, answer: question }), 30);
});
`;

const made = { dir: '' };
beforeAll(async () => {
  made.dir = await mkdtemp(join(tmpdir(), 'underside-queue-'));
  await writeFile(join(made.dir, 'thread.mjs'), thread);
});
afterAll(() => rm(made.dir, { recursive: true, force: true }));

const open = () =>
  openWorkerQueue<string, string, never>(pathToFileURL(join(made.dir, 'thread.mjs')), undefined);

it('answers the next question after a thread has died, 5 of 5', async () => {
  const queue = open();
  for (let time = 0; time < 5; time++) {
    await expect(queue.ask('die')).rejects.toThrow('It broke.');
    await expect(queue.ask(`after ${time}`)).resolves.toBe(`after ${time}`);
  }
  await queue.close();
});

it('fails every question of a thread that is gone, and none of the next', async () => {
  const queue = open();
  const lost = Promise.allSettled([queue.ask('one'), queue.ask('leave'), queue.ask('three')]);
  expect((await lost).map((each) => each.status)).toEqual(['rejected', 'rejected', 'rejected']);
  expect(await Promise.all([queue.ask('four'), queue.ask('five')])).toEqual(['four', 'five']);
  await queue.close();
});

it('a refused question leaves the thread and its other questions alone', async () => {
  const queue = open();
  const [refused, other] = await Promise.allSettled([queue.ask('refuse'), queue.ask('other')]);
  expect(refused).toMatchObject({ status: 'rejected', reason: { message: 'Not so.' } });
  expect(other).toEqual({ status: 'fulfilled', value: 'other' });
  await queue.close();
});
