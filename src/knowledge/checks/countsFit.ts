import { figuresOf } from '../figuresOf.ts';
import { type Check, faultIn } from './check.ts';

/** No more records show a thing than were counted, and a count moves a figure that can be moved. */
export const countsFit: Check = {
  id: 'counts-fit',
  protects:
    'A count is of records: no more of them can show a thing than were counted, and the judged figure they move has a range.',
  find: ({ entries }) =>
    entries.flatMap((entry) =>
      figuresOf(entry.value).flatMap(({ path, figure }) => {
        if (figure.counts === undefined) return [];
        const { seen, of } = figure.counts;
        const what =
          seen > of
            ? `It was seen in ${seen} of ${of} records.`
            : /^([\d.]+), \1–\1$/.test(figure.in100)
              ? `The judged figure "${figure.in100}" has no range, so that the count can’t move it.`
              : undefined;
        if (what === undefined) return [];
        return [
          faultIn('counts-fit', entry, [...path, 'counts'], {
            what,
            mend: 'Count again: how many records show it, of how many that could; and judge the figure with a range.',
            example:
              'shows: { in100: "68, 50–83", by: judgement, counts: { seen: 14, of: 19, where: "case pieces of the town", source: ID } }',
          }),
        ];
      }),
    ),
};
