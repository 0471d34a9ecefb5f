import { type Check, faultIn } from './check.ts';
import { citations } from './citations.ts';

/** Every work in sources.yaml is cited by some entry; further reading stands in sources-further.yaml. */
export const worksUsed: Check = {
  id: 'works-used',
  protects: 'The list of sources is what the figures rest on, with nothing added for show.',
  find: ({ entries }) => {
    const cited = new Set(entries.flatMap((entry) => citations(entry).map(({ id }) => id)));
    return entries.flatMap((entry) => {
      if (entry.kind !== 'work' || entry.file === 'sources-further.yaml' || cited.has(entry.id)) return [];
      return [
        faultIn('works-used', entry, ['id'], {
          what: `No entry cites the work ${entry.id}.`,
          mend: 'Cite it where it bears on a figure, or move it to sources-further.yaml.',
          example: `sources: [${entry.id}]`,
        }),
      ];
    });
  },
};
