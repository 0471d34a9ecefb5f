import { figureNumbers, figuresOf } from '../figuresOf.ts';
import { type Check, faultIn } from './check.ts';

/** In a figure, the lowest is not above the best, nor the best above the highest. */
export const figuresInOrder: Check = {
  id: 'figures-in-order',
  protects: 'The best figure lies between the lowest and the highest believable.',
  find: ({ entries }) =>
    entries.flatMap((entry) =>
      figuresOf(entry.value).flatMap(({ path, figure }) => {
        const { best, low, high } = figureNumbers(figure);
        if (low <= best && best <= high) return [];
        return [
          faultIn('figures-in-order', entry, path, {
            what: `The figure "${figure.in100}" has its best outside its range.`,
            mend: 'Write the best first, then the lowest, an en dash and the highest.',
            example: 'period: "86, 72–94"',
          }),
        ];
      }),
    ),
};
