import { soundEntries } from '../entry.ts';
import { type Check, faultIn } from './check.ts';

/** making.yaml has a line for every way of making, ageing and use that the model asks for. */
export const makingComplete: Check = {
  id: 'making-complete',
  protects: 'Every way in which a piece or part can come about has its figures.',
  find: ({ entries, files }) => {
    const [entry] = soundEntries(entries, 'making');
    if (entry === undefined) {
      if (entries.some((each) => each.kind === 'making')) return [];
      return [
        {
          code: 'knowledge.making-complete',
          file: 'making.yaml',
          line: 1,
          entry: 'making',
          what: `Among ${files.length} files there is no making.yaml that can be read.`,
          mend: 'Put making.yaml back into the knowledge folder.',
          example: 'making.yaml',
        },
      ];
    }
    return Object.entries(needed).flatMap(([table, keys]) =>
      keys
        .filter(
          (key) => (entry.value[table as keyof typeof needed] as Record<string, unknown>)[key] === undefined,
        )
        .map((key) =>
          faultIn('making-complete', entry, [table], {
            what: `${table} has no entry for ${key}.`,
            mend: `Add "${key}" under ${table}.`,
            example: `${table}:\n  ${key}: …`,
          }),
        ),
    );
  },
};

const needed = {
  startingOdds: ['sceptical', 'even', 'trusting'],
  tooling: [
    'period',
    'bench-copy-thorough',
    'bench-copy-ordinary',
    'machine-copy',
    'to-deceive-thorough',
    'to-deceive-ordinary',
    'later',
  ],
  ageing: [
    'period',
    'bench-copy',
    'machine-copy',
    'to-deceive-thorough',
    'to-deceive-ordinary',
    'repair',
    'improve',
    'other-old',
    'scrubbed',
  ],
  use: ['used', 'spared', 'to-deceive-thorough', 'to-deceive-ordinary', 'repair', 'improve', 'other-old'],
} as const;
