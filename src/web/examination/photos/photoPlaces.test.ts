import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inPixels, inShares, type Place } from './photoPlaces.ts';

it('a mark comes back from the board where it was, at any size of photo (property)', () => {
  const share = fc.integer({ min: 0, max: 10_000 }).map((each) => each / 10_000);
  const side = fc.integer({ min: 1, max: 12_000 });
  fc.assert(
    fc.property(fc.array(fc.tuple(share, share)), side, side, (raw, widthPx, heightPx) => {
      const places = raw as Place[];
      expect(inShares(inPixels(places, { widthPx, heightPx }), { widthPx, heightPx })).toEqual(places);
    }),
    { seed: 7 },
  );
});

it('the middle of a photo of four pixels lies between them, and nothing lies outside', () => {
  const size = { widthPx: 2, heightPx: 2 };
  expect(inPixels([[0.5, 0.5]], size)).toEqual([[0.5, 0.5]]);
  expect(inShares([[-3, 9]], size)).toEqual([[0, 1]]);
});
