import { type Entry, type SoundEntry, soundEntries } from '../entry.ts';
import { figureNumbers, figuresOf } from '../figuresOf.ts';
import type { KnowledgeFault } from '../knowledgeFault.ts';
import { type Check, faultIn } from './check.ts';

/** Shares lie within 0 and 100, and neither end is claimed without a reason. */
export const sharesBelievable: Check = {
  id: 'shares-believable',
  protects:
    'No figure says never or always unless it gives its reason: one such figure would settle a piece by itself.',
  find: ({ entries }) => [
    ...entries.flatMap(figureFaults),
    ...soundEntries(entries, 'making').flatMap((entry) => lineFaults(entry)),
  ],
};

function figureFaults(entry: Entry): KnowledgeFault[] {
  return figuresOf(entry.value).flatMap(({ path, figure }) => {
    const numbers = Object.values(figureNumbers(figure));
    if (numbers.some((each) => each < 0 || each > 100))
      return [
        faultIn('shares-believable', entry, path, {
          what: `The figure "${figure.in100}" goes beyond 100 of 100.`,
          mend: 'Count of 100 such parts how many would show it.',
          example: 'period: "86, 72–94"',
        }),
      ];
    if (figure.why !== undefined || numbers.every((each) => each > 0 && each < 100)) return [];
    return [
      faultIn('shares-believable', entry, path, {
        what: `The figure "${figure.in100}" says never or always and gives no reason.`,
        mend: 'Move it off 0 and 100, or say in a "why" what makes it certain.',
        example: 'period: "0.5, 0.1–2"',
      }),
    ];
  });
}

/** The lines of making.yaml hold shares between 0 and 1. */
function lineFaults(entry: SoundEntry<'making'>): KnowledgeFault[] {
  const { tooling, ageing, use } = entry.value;
  return Object.entries({ tooling, ageing, use }).flatMap(([table, rows]) =>
    Object.entries(rows).flatMap(([key, row]) =>
      Object.entries(row).flatMap(([name, points]) => {
        if (!Array.isArray(points)) return [];
        return points.flatMap(([, share], index) => {
          if (share > 0 && share < 1) return [];
          return [
            faultIn('shares-believable', entry, [table, key, name, index], {
              what: `${table} → ${key} → ${name} has the share ${share}.`,
              mend: 'Write a share above 0 and below 1.',
              example: 'natural: [[0, 0.01], [100, 0.7]]',
            }),
          ];
        });
      }),
    ),
  );
}
