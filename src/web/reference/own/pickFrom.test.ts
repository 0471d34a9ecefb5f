import { expect, it } from 'vitest';
import { pickFrom } from './pickFrom.ts';

const forms = [
  { id: 'tilt-top-table', name: 'Tilt-top table' },
  { id: 'card-table', name: 'Card table' },
  { id: 'stool', name: 'Stool' },
];

it('takes the entry of that name, or the only one that has the words in it', () => {
  expect(pickFrom(forms, ' stool ')).toEqual({ id: 'stool' });
  expect(pickFrom(forms, 'tilt')).toEqual({ id: 'tilt-top-table' });
});

it('asks where several are meant, or none', () => {
  expect(pickFrom(forms, 'table')).toEqual({
    doubt: '2 on the shelf have “table” in their names: pick one.',
  });
  expect(pickFrom(forms, 'sofa')).toMatchObject({ doubt: expect.stringContaining('“sofa”') });
});
