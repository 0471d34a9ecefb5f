import { type Check, faultIn } from './check.ts';

/** In a file that lists entries, they stand by id. */
export const entriesSorted: Check = {
  id: 'entries-sorted',
  protects: 'Two people adding to one file do not add the same sign at both its ends.',
  find: ({ entries }) =>
    entries.flatMap((entry, index) => {
      const before = entries[index - 1];
      if (before === undefined || before.file !== entry.file || before.id <= entry.id) return [];
      return [
        faultIn('entries-sorted', entry, ['id'], {
          what: `${entry.id} stands after ${before.id}.`,
          mend: 'Sort the entries of the file by id.',
          example: `- id: ${entry.id}\n- id: ${before.id}`,
        }),
      ];
    }),
};
