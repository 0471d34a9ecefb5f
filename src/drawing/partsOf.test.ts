import { expect, it } from 'vitest';
import { form } from '../knowledge/schema.ts';
import { partsOf } from './partsOf.ts';

const chair = form.parse({
  id: 'stool',
  name: 'Stool',
  family: 'seating',
  sides: 'seated',
  what: 'A seat without a back.',
  styleSpan: [1700, 1800],
  features: [
    {
      id: 'seat',
      name: 'Seat',
      options: [
        { id: 'slip', name: 'Slip' },
        { id: 'rush', name: 'Rush' },
      ],
    },
  ],
  parts: [
    { id: 'rail', kind: 'front-rail', name: 'rail', renewed: '5, 2–10' },
    { id: 'rush', kind: 'rush-seat', name: 'rush', renewed: '5, 2–10', when: { seat: ['rush'] } },
    { id: 'frame', kind: 'seat-frame', name: 'frame', renewed: '5, 2–10', when: { seat: ['slip'] } },
    { id: 'odd', kind: 'seat-frame', name: 'odd', renewed: '5, 2–10', when: { colour: ['red'] } },
  ],
  measures: [],
  drawing: [],
});
const ids = (features: Record<string, string>) => partsOf(chair, features).map((part) => part.id);

it('keeps the parts whose feature was chosen', () => expect(ids({ seat: 'rush' })).toEqual(['rail', 'rush']));
it('takes the first option where none was chosen', () => expect(ids({})).toEqual(['rail', 'frame']));
it('takes the first option where the one chosen is not known', () =>
  expect(ids({ seat: 'cane' })).toEqual(['rail', 'frame']));
