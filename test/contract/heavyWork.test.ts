import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { piece as pieceSchema } from '../../src/piece/piece.ts';
import { openPhotos, photoLimits } from '../../src/record/photos.ts';
import { type InTurn, takingTurns } from '../../src/record/turns.ts';
import { askOpinion } from '../../src/server/askOpinion.ts';
import type { JobStep } from '../../src/server/jobs.ts';
import type { OpinionQuestion } from '../../src/server/opinionQuestion.ts';
import type { WorkerQueue } from '../../src/server/workerQueue.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

/** A line that counts what goes through it and how much of that runs together. */
function countedLine() {
  const line = takingTurns(1);
  const seen = { all: 0, now: 0, most: 0 };
  const inTurn: InTurn = (work, onAhead) =>
    line(async () => {
      seen.all += 1;
      seen.now += 1;
      seen.most = Math.max(seen.most, seen.now);
      return work().finally(() => {
        seen.now -= 1;
      });
    }, onAhead);
  return { inTurn, seen };
}

it('opens large pictures in the line of heavy work, one at a time, and small ones beside it', async () => {
  const { inTurn, seen } = countedLine();
  const limits = { ...photoLimits, heicWorker: new URL('file:///none'), largeBytes: 20_000 };
  const photos = await openPhotos(await temporaryFolder(), limits, { heavy: inTurn });
  const put = async (bytes: Buffer) => {
    const source = (async function* () {
      yield new Uint8Array(bytes);
    })();
    return photos.put(createHash('sha256').update(bytes).digest('hex'), source);
  };
  const picture = (red: number) =>
    sharp({ create: { width: 120, height: 80, channels: 3, background: { r: red, g: 0, b: 0 } } });
  const large = await Promise.all([1, 2, 3].map((red) => picture(red).png({ progressive: true }).toBuffer()));
  const small = await Promise.all([4, 5].map((red) => picture(red).jpeg().toBuffer()));
  const kept = await Promise.all([...large, ...small].map(put));
  expect(kept.every((one) => one.ok)).toBe(true);
  expect(seen).toEqual({ all: 3, now: 0, most: 1 });
});

it('sets one opinion at a time, and says of the next that it waits', async () => {
  const ends: (() => void)[] = [];
  const asked: string[] = [];
  const desk = {
    ask: async ({ piece }: OpinionQuestion) => {
      asked.push(piece.id);
      await new Promise<void>((end) => ends.push(end));
      return new Uint8Array();
    },
  } as unknown as WorkerQueue<OpinionQuestion, Uint8Array, JobStep>;
  const setOpinion = askOpinion(desk, undefined as never, () => new Date(0), takingTurns(1));
  const steps: string[] = [];
  const of = (id: string) => pieceSchema.parse({ id, form: 'side-chair' });
  const all = ['one', 'two', 'three'].map((id) =>
    setOpinion(of(id), ({ step }) => steps.push(`${id}: ${step}`)),
  );
  for (const expected of [['one'], ['one', 'two'], ['one', 'two', 'three']]) {
    await expect.poll(() => asked).toEqual(expected);
    ends.at(-1)?.();
  }
  await Promise.all(all);
  expect(steps).toEqual([
    'two: Waiting for the work before it',
    'three: Waiting for 2 pieces of work before it',
    'three: Waiting for the work before it',
  ]);
});
