import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitted, isWhole, panned, seen, showing, toFrame, toPicture, zoomed } from './boardView.ts';

const side = fc.integer({ min: 40, max: 9000 });
const sizes = fc.record({ widthPx: side, heightPx: side });
const share = fc.double({ min: 0, max: 1, noNaN: true });

test('a place goes to the frame and back, wherever one looks', () => {
  fc.assert(
    fc.property(
      sizes,
      sizes,
      share,
      share,
      fc.double({ min: 0.2, max: 50, noNaN: true }),
      (picture, frame, u, v, near) => {
        const view = zoomed(
          fitted(picture, frame),
          near,
          [u * frame.widthPx, v * frame.heightPx],
          picture,
          frame,
        );
        const place = [u * picture.widthPx, v * picture.heightPx] as const;
        const back = toPicture(view, toFrame(view, place));
        expect(back[0]).toBeCloseTo(place[0], 6);
        expect(back[1]).toBeCloseTo(place[1], 6);
        const part = seen(view, picture, frame);
        expect(part.x + part.widthPx).toBeLessThanOrEqual(picture.widthPx);
        expect(part.y + part.heightPx).toBeLessThanOrEqual(picture.heightPx);
      },
    ),
    { seed: 4, numRuns: 200 },
  );
});

test('what one zooms at stays under the finger, as long as the edges of the picture are far', () => {
  const [picture, frame] = [
    { widthPx: 8000, heightPx: 6000 },
    { widthPx: 800, heightPx: 600 },
  ];
  const near = zoomed(fitted(picture, frame), 4, [400, 300], picture, frame);
  const place = toPicture(near, [380, 310]);
  expect(toFrame(zoomed(near, 1.5, [380, 310], picture, frame), place)).toEqual([
    expect.closeTo(380, 6),
    expect.closeTo(310, 6),
  ]);
});

test('the picture is never lost from the frame, and a place can be brought into sight', () => {
  const [picture, frame] = [
    { widthPx: 4000, heightPx: 3000 },
    { widthPx: 400, heightPx: 400 },
  ];
  const whole = fitted(picture, frame);
  expect(isWhole(whole, picture, frame)).toBe(true);
  const near = zoomed(whole, 10, [0, 0], picture, frame);
  expect(panned(near, [1e6, 1e6], picture, frame)).toMatchObject({ left: 0, top: 0 });
  const [x, y] = toFrame(showing(near, [3990, 2000], picture, frame), [3990, 2000]);
  expect(x).toBeLessThanOrEqual(400);
  expect(y).toBeLessThanOrEqual(400);
  expect(Math.min(x, y)).toBeGreaterThan(0);
});
