import { expect, test } from 'vitest';
import { pretendWorkers } from '../../worker/testing/pretendWorkers.ts';
import type { CardFound } from './findCard.ts';
import { openVision } from './openVision.ts';
import type { VisionWorker } from './visionWorker.ts';

const picture = new Blob(['a picture']);
const none: CardFound = { found: false, message: 'There is none.' };
const brokeOff = { found: false, message: expect.stringMatching(/broke off.*by hand\.$/) };

test('the page hears how far the search is, and what it found', async () => {
  const { start } = pretendWorkers<VisionWorker>(() => ({
    findCard: async (_, onProgress) => {
      await onProgress(0.5);
      return none;
    },
  }));
  const shares: number[] = [];
  expect(await openVision(start).findCard(picture, (share) => shares.push(share))).toEqual(none);
  expect(shares).toEqual([0.5]);
});

test('a search that fails says what to do, and the next one begins afresh', async () => {
  const { started, start } = pretendWorkers<VisionWorker>((index) => ({
    findCard: async () => {
      if (index === 0) throw 6789123;
      return none;
    },
  }));
  const vision = openVision(start);
  expect(await vision.findCard(picture)).toMatchObject(brokeOff);
  expect(await vision.findCard(picture)).toEqual(none);
  expect(started.map((each) => each.ended)).toEqual([true, false]);
});

test('closing ends what is under way', async () => {
  const { started, start } = pretendWorkers<VisionWorker>(() => ({ findCard: () => new Promise(() => {}) }));
  const vision = openVision(start);
  const asked = vision.findCard(picture);
  vision.close();
  expect(await asked).toMatchObject(brokeOff);
  expect(started[0]?.ended).toBe(true);
});
