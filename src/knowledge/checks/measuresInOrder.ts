import { soundEntries } from '../entry.ts';
import { type Check, faultIn } from './check.ts';

/** A form's usual measure lies between its lowest and its highest. */
export const measuresInOrder: Check = {
  id: 'measures-in-order',
  protects: 'A measure that is taken at the piece is held against a range that makes sense.',
  find: ({ entries }) =>
    soundEntries(entries, 'form').flatMap((entry) =>
      entry.value.measures.flatMap(({ id, lowMm, typicalMm, highMm, usual }, index) => {
        const odd = [typicalMm, ...usual.map(({ mm }) => mm)].find((mm) => mm < lowMm || highMm < mm);
        if (odd === undefined && lowMm <= highMm) return [];
        return [
          faultIn('measures-in-order', entry, ['measures', index], {
            what: `The measure ${id} has its usual size of ${odd ?? typicalMm} mm outside ${lowMm}–${highMm} mm.`,
            mend: 'Put the lowest, the usual and the highest in order, in millimeters.',
            example: 'lowMm: 380\n    typicalMm: 430\n    highMm: 480',
          }),
        ];
      }),
    ),
};
