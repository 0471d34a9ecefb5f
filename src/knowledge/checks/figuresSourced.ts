import { figuresOf } from '../figuresOf.ts';
import type { YamlPath } from '../parseYaml.ts';
import { type Check, faultIn } from './check.ts';

/** Every figure and every span of years says on whose word it stands. */
export const figuresSourced: Check = {
  id: 'figures-sourced',
  protects: 'Every figure says on whose word it stands, so that another expert can disagree with a number.',
  find: ({ entries }) =>
    entries.flatMap((entry) => {
      if (entry.value === undefined || entry.kind === 'work') return [];
      const { basis, span } = entry.value as { basis?: Word; span?: Word };
      if (saysWhose(basis)) return [];
      const unsourced: YamlPath[] = figuresOf(entry.value)
        .filter(({ figure }) => !saysWhose(figure))
        .map(({ path }) => path);
      if (span !== undefined && !saysWhose(span)) unsourced.push(['span']);
      return unsourced.map((path) =>
        faultIn('figures-sourced', entry, path, {
          what: `${path.map(String).join(' → ')} does not say on whose word it stands.`,
          mend: 'Give it a source, or say common practice, judgement or from memory; or give the entry a basis that holds for all its figures.',
          example: 'basis: { by: common practice, why: "One sentence that says why these figures." }',
        }),
      );
    }),
};

type Word = { source?: string; by?: string };

function saysWhose(word: Word | undefined): boolean {
  return word?.source !== undefined || word?.by !== undefined;
}
