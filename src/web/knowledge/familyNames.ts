import type { Form } from '../../knowledge/schema.ts';

/** The families of form, in the order they are shown. */
export const familyNames: Readonly<Record<Form['family'], string>> = {
  seating: 'Seating',
  case: 'Cases',
  table: 'Tables',
  bed: 'Beds',
  clock: 'Clocks',
  glass: 'Glasses',
};
