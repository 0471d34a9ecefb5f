import { expect, test } from 'vitest';
import type { FromVision, ToVision } from './messages.ts';
import { openVision, type VisionWorker } from './openVision.ts';

/** A worker that answers as it is told, and remembers what was asked of it. */
function pretend() {
  const started: (VisionWorker & { words: ToVision[]; ended: boolean })[] = [];
  const start = () => {
    const worker = {
      words: [] as ToVision[],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage(word: ToVision) {
        worker.words.push(word);
      },
      terminate() {
        worker.ended = true;
      },
    } as VisionWorker & { words: ToVision[]; ended: boolean };
    started.push(worker);
    return worker;
  };
  const say = (index: number, word: FromVision) => started[index]?.onmessage?.({ data: word });
  return { started, start, say };
}

const picture = new Blob(['a picture']);
const none = { found: false as const, message: 'There is none.' };

test('nothing is started before it is asked, and one worker serves many', async () => {
  const { started, start, say } = pretend();
  const vision = openVision(start);
  expect(started).toHaveLength(0);
  const shares: number[] = [];
  const [first, second] = [vision.findCard(picture, (share) => shares.push(share)), vision.findCard(picture)];
  say(0, { ask: 1, say: 'progress', share: 0.5 });
  say(0, { ask: 2, say: 'card', card: none });
  say(0, { ask: 1, say: 'card', card: { ...none, message: 'Nor here.' } });
  expect([await first, await second].map((card) => !card.found && card.message)).toEqual([
    'Nor here.',
    'There is none.',
  ]);
  expect(shares).toEqual([0.5]);
  expect(started).toHaveLength(1);
});

test.each(['said', 'thrown'])(
  'after an error that was %s the worker is ended and the next question starts another',
  async (how) => {
    const { started, start, say } = pretend();
    const vision = openVision(start);
    const [first, waiting] = [vision.findCard(picture), vision.findCard(picture)];
    if (how === 'said') say(0, { ask: 1, say: 'failed', why: '6789123' });
    else started[0]?.onerror?.({ message: 'out of memory' });
    for (const card of [await first, await waiting])
      expect(card).toMatchObject({ found: false, message: expect.stringMatching(/broke off.*by hand\.$/) });
    expect(started[0]?.ended).toBe(true);
    const again = vision.findCard(picture);
    say(1, { ask: 3, say: 'card', card: none });
    expect(await again).toEqual(none);
  },
);

test('closing ends what is under way', async () => {
  const { started, start } = pretend();
  const vision = openVision(start);
  const asked = vision.findCard(picture);
  vision.close();
  expect(await asked).toMatchObject({ found: false });
  expect(started[0]?.ended).toBe(true);
});
