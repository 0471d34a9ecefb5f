import { z } from 'zod';
import type { Fault } from '../../ground/fault.ts';
import { groupsAt, singleLinkage } from '../../sets/singleLinkage.ts';
import { defineCalculation } from '../define.ts';

const input = z.strictObject({
  names: z.array(z.string().min(1).max(100)).min(2).max(60),
  /** A square table: how far each is from each, 0 from itself. */
  distances: z
    .array(z.array(z.number().min(0)))
    .min(2)
    .max(60),
  linkage: z.enum(['single', 'complete', 'average']).default('single'),
  /** Where the tree is cut; left out, only the merges are told. */
  cut: z.number().min(0).optional(),
});
type Input = z.infer<typeof input>;

/** `sets.groups`: see its own fields. */
export const setsGroups = defineCalculation({
  id: 'sets.groups',
  answers: 'Which things go together, by how far they are from each other?',
  method:
    'The two nearest groups merge, again and again. The distance between groups is that of their nearest members (single), of their furthest (complete), or the mean over all pairs (average). ' +
    'merges tells each step with its height; groups are those that stand at cut. Single linkage strings things together by their neighbors; complete linkage keeps groups tight. Where two pairs are equally near the first of them merges first. ' +
    'sets.likeness does this with the measures of chairs, and says where to cut.',
  source:
    'Sneath (1957) for single, Sørensen (1948) for complete, Sokal and Michener (1958) for average linkage, from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    merges: z.array(z.strictObject({ height: z.number(), members: z.array(z.string()) })),
    groups: z.array(z.array(z.string())).optional(),
  }),
  example: {
    names: ['left pair', 'right pair', 'odd one'],
    distances: [
      [0, 2, 9],
      [2, 0, 8],
      [9, 8, 0],
    ],
    cut: 5,
  },
  run: (asked) => {
    const faults = tableFaults(asked);
    if (faults.length > 0) return { ok: false, faults };
    const { names, distances, linkage, cut } = asked;
    const merges = singleLinkage(distances, linkage);
    const named = (indices: readonly number[]) => indices.map((index) => names[index] as string);
    return {
      ok: true,
      output: {
        merges: merges.map(({ height, members }) => ({ height, members: named(members) })),
        ...(cut === undefined ? {} : { groups: groupsAt(names.length, merges, cut).map(named) }),
      },
    };
  },
});

function tableFaults({ names, distances }: Input): Fault[] {
  const fault = (path: string, message: string): Fault[] => [{ code: 'sets.distances', path, message }];
  const n = names.length;
  if (new Set(names).size < n)
    return fault('names', 'A name is there twice: give each thing a name of its own.');
  if (distances.length !== n)
    return fault(
      'distances',
      `There are ${n} names and ${distances.length} rows: give one row for each name.`,
    );
  for (const [row, each] of distances.entries()) {
    if (each.length !== n)
      return fault(`distances[${row}]`, `This row has ${each.length} distances: give ${n}, one to each.`);
    if (each[row] !== 0)
      return fault(`distances[${row}][${row}]`, `“${names[row]}” is ${each[row]} from itself: write 0.`);
    const other = each.findIndex((distance, column) => distance !== distances[column]?.[row]);
    if (other > row)
      return fault(
        `distances[${row}][${other}]`,
        `“${names[row]}” and “${names[other]}” are at two different distances: write the same both ways.`,
      );
  }
  return [];
}
