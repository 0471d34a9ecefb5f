import { soundEntries } from '../entry.ts';
import { figureNumbers } from '../figuresOf.ts';
import { type Check, faultIn } from './check.ts';

/** A sign shows more often in one state of its cause than in another. */
export const rowsDiffer: Check = {
  id: 'rows-differ',
  protects: 'Nobody kneels under a chair to look for a sign that can tell nothing.',
  find: ({ entries }) =>
    soundEntries(entries, 'sign').flatMap((entry) => {
      const bests = Object.values(entry.value.shows).map((figure) => figureNumbers(figure).best);
      if (bests.length < 2 || bests.some((best) => best !== bests[0])) return [];
      return [
        faultIn('rows-differ', entry, ['shows'], {
          what: 'It shows equally often in every state of its cause, so that finding it says nothing.',
          mend: 'Correct the figures, hang it on the cause that makes it appear, or leave it out.',
          example: 'shows:\n  in-use: "30, 15–50"\n  out-of-use: "1, 0.3–3"',
        }),
      ];
    }),
};
