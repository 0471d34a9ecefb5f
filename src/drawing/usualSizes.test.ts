import { expect, it } from 'vitest';
import { form as formShape } from '../knowledge/schema.ts';
import { drawForm } from './drawForm.ts';
import { usualSizes } from './usualSizes.ts';

const bench = formShape.parse({
  id: 'bench',
  name: 'Bench',
  family: 'seating',
  sides: 'seated',
  what: 'A seat for several.',
  styleSpan: [1700, 1800],
  features: [
    {
      id: 'length',
      name: 'Length',
      options: [
        { id: 'long', name: 'Long' },
        { id: 'short', name: 'Short' },
      ],
    },
  ],
  parts: [
    { id: 'top', kind: 'top', name: 'top', renewed: '5, 2–10' },
    { id: 'leg', kind: 'leg', name: 'leg', renewed: '5, 2–10' },
  ],
  measures: [
    { id: 'height', name: 'height', how: 'Up.', typicalMm: 450, lowMm: 400, highMm: 500 },
    {
      id: 'width',
      name: 'width',
      how: 'Across.',
      typicalMm: 1800,
      lowMm: 600,
      highMm: 2400,
      usual: [{ when: { length: ['short'] }, mm: 900 }],
    },
  ],
  drawing: [{ part: 'top', view: 'front', path: 'R -width/2 0 width height' }],
});

it('gives the size of the features chosen, and of the first option where none is', () => {
  expect(usualSizes(bench, { length: 'short' })).toEqual({ height: 450, width: 900 });
  expect(usualSizes(bench, {})).toEqual({ height: 450, width: 1800 });
});

it('is what a measure not taken is drawn at', () => {
  expect(drawForm(bench, { length: 'short' }, {}).views[0]?.extent).toEqual([-450, -450, 900, 450]);
  expect(drawForm(bench, { length: 'short' }, { width: 1000 }).views[0]?.extent[2]).toBe(1000);
});
