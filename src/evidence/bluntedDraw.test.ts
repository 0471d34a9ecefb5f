import { expect, it } from 'vitest';
import { blunting } from './bluntedDraw.ts';
import { bestDraw } from './figures.ts';
import { smallKnowledge } from './testing/smallKnowledge.ts';

const { signs } = smallKnowledge();
const saw = signs['saw-arcs'] as NonNullable<(typeof signs)[string]>;
const shares = (widths: number) => {
  const draw = blunting([saw])(bestDraw(), widths);
  return ['hand', 'early-machine', 'modern-machine'].map((state) => draw(saw.shows[state] as never));
};

// By hand: 1, 45 and 30 in a hundred, their mean 25.33; half their ranges 0.75, 15 and 10.
it('moves each figure half its range toward the mean of the sign, by the width', () => {
  const [hand, early, modern] = shares(1);
  expect(hand).toBeCloseTo(0.0175, 12);
  expect(early).toBeCloseTo(0.3, 12);
  expect(modern).toBeCloseTo(0.76 / 3, 12);
});

it('never moves one beyond the mean, nor any where there is no bluntness', () => {
  for (const share of shares(100)) expect(share).toBeCloseTo(0.76 / 3, 12);
  expect(shares(0)).toEqual([0.01, 0.45, 0.3]);
  expect(shares(-1)).toEqual([0.01, 0.45, 0.3]);
});

it('leaves the figures of other signs as drawn', () => {
  const other = signs['plane-tracks']?.shows.hand as never;
  expect(blunting([saw])(bestDraw(), 1)(other)).toBe(bestDraw()(other));
});
