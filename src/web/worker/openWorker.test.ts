import { expect, test } from 'vitest';
import { openWorker, WorkerEnded } from './openWorker.ts';
import { pretendWorkers, settled } from './testing/pretendWorkers.ts';

type Api = { double(x: number): number; never(): Promise<number>; slip(why: unknown): never };
const api = (): Api => ({
  double: (x) => 2 * x,
  never: () => new Promise(() => {}),
  slip: (why) => {
    throw why;
  },
});

test('nothing is started before the first call, and one worker serves many', async () => {
  const { started, start } = pretendWorkers(api);
  const worker = openWorker<Api>(start);
  expect(started).toHaveLength(0);
  expect(await Promise.all([1, 2].map((x) => worker.call((far) => far.double(x))))).toEqual([2, 4]);
  expect(started).toHaveLength(1);
});

test.each([
  ['thrown inside', new Error('no memory')],
  ['thrown as a number', 6789123],
  ['broken from outside', undefined],
])(
  'a call that fails, %s, ends the worker with all that waits, and the next starts another',
  async (_, slip) => {
    const { started, start } = pretendWorkers(api);
    const worker = openWorker<Api>(start);
    const waits = worker.call((far) => far.never()).catch((why) => why);
    const fails = slip === undefined ? waits : worker.call((far) => far.slip(slip)).catch((why) => why);
    if (slip === undefined) started[0]?.break('no memory');
    for (const why of [await waits, await fails]) {
      expect(why).not.toBeInstanceOf(WorkerEnded);
      expect(why.message).toBe(slip === 6789123 ? '6789123' : 'no memory');
    }
    expect(started[0]?.ended).toBe(true);
    expect(await worker.call((far) => far.double(4))).toBe(8);
    expect(started).toHaveLength(2);
  },
);

test('a listener hears what the worker tells on the way, and nothing after the answer', async () => {
  const later: { tell?: (word: string) => void } = {};
  const { start } = pretendWorkers(() => ({
    async ask(tell: (word: string) => void) {
      later.tell = tell;
      await tell('on the way');
      return 'the answer';
    },
  }));
  const told: string[] = [];
  const worker = openWorker<{ ask(tell: (word: string) => void): Promise<string> }>(start);
  told.push(await worker.call((far, heard) => far.ask(heard((word: string) => told.push(word)))));
  later.tell?.('too late');
  await settled();
  expect(told).toEqual(['on the way', 'the answer']);
});

test('what a worker ended on purpose was at is told apart, and never answers', async () => {
  const { started, start } = pretendWorkers(api);
  const worker = openWorker<Api>(start);
  const waits = worker.call((far) => far.never());
  worker.end();
  await expect(waits).rejects.toBeInstanceOf(WorkerEnded);
  expect(started[0]?.ended).toBe(true);
});

test('every fresh worker is handed what it has to hold, before its first call', async () => {
  const heard: string[] = [];
  const { start } = pretendWorkers((index) => ({
    hold: (what: string) => void heard.push(`${index} ${what}`),
    ask: () => heard.push(`${index} ask`),
  }));
  const worker = openWorker<{ hold(what: string): void; ask(): number }>(start, (far) => far.hold('it'));
  await worker.call((far) => far.ask());
  worker.end();
  await worker.call((far) => far.ask());
  await settled();
  expect(heard).toEqual(['0 it', '0 ask', '1 it', '1 ask']);
});
