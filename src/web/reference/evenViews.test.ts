import { expect, test } from 'vitest';
import type { Drawing } from '../../drawing/drawForm.ts';
import { evenViews } from './evenViews.ts';

const view = (box: [number, number, number, number]): Drawing['views'][number] => ({
  view: 'front',
  name: 'Front',
  box,
  extent: box,
  shapes: [],
});

test('views side by side stand at one scale, each in the middle of its box', () => {
  expect(evenViews([view([-500, -900, 1000, 900]), view([0, -900, 400, 900])]).map(({ box }) => box)).toEqual(
    [
      [-500, -900, 1000, 900],
      [-300, -900, 1000, 900],
    ],
  );
});

test('a tall narrow piece gets room beside it', () => {
  expect(evenViews([view([-250, -2000, 500, 2000])])[0]?.box).toEqual([-620, -2000, 1240, 2000]);
});
