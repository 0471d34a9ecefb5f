import { soundEntries } from '../entry.ts';
import { causeStates } from '../schema.ts';
import { type Check, faultIn } from './check.ts';

/** A sign gives a figure for every state of its cause, and for nothing else. */
export const rowsComplete: Check = {
  id: 'rows-complete',
  protects:
    'A sign says how often it shows in every state of its cause, so that its absence can be weighed too.',
  find: ({ entries }) =>
    soundEntries(entries, 'sign').flatMap((entry) => {
      const { hangsOn, shows, span } = entry.value;
      const cause = hangsOn.startsWith('alteration/') ? 'alteration' : hangsOn;
      const states = causeStates[cause] ?? [];
      const allowed = cause === 'making' ? [...states, 'later'] : states;
      const example = `shows:\n  ${states.map((state) => `${state}: "…, …–…"`).join('\n  ')}`;
      const missing = states
        .filter((state) => shows[state] === undefined)
        .map((state) => ({
          path: ['shows'],
          what: `It hangs on ${hangsOn} but has no figure for ${state}.`,
          mend: `Add a row "${state}" under shows.`,
        }));
      const strange = Object.keys(shows)
        .filter((state) => !allowed.includes(state))
        .map((state) => ({
          path: ['shows', state],
          what: `It has a figure for "${state}", which is no state of ${hangsOn}.`,
          mend: `Use only ${allowed.join(', ')}; or correct what it hangs on.`,
        }));
      const dated = cause === 'part-year' || cause === 'year';
      const undated =
        dated && span === undefined
          ? [
              {
                path: ['hangsOn'],
                what: 'It hangs on the year but has no span of years.',
                mend: 'Add a span.',
              },
            ]
          : [];
      return [...missing, ...strange, ...undated].map(({ path, ...words }) =>
        faultIn('rows-complete', entry, path, { ...words, example }),
      );
    }),
};
