import { type Entry, soundEntries } from '../entry.ts';
import { figureNumbers, figuresOf } from '../figuresOf.ts';
import type { KnowledgeFault } from '../knowledgeFault.ts';
import type { YamlPath } from '../parseYaml.ts';
import { causeStates, type Sign } from '../schema.ts';
import { type Check, faultIn } from './check.ts';

/** What was judged apart is of a figure that stands, by a judge who is named, in order. */
export const judgedFit: Check = {
  id: 'judged-fit',
  protects:
    'A judgment asked for apart names a figure that stands and a judge that making.yaml describes, and its three numbers are in order.',
  find: ({ entries }) => {
    const judges = soundEntries(entries, 'making')[0]?.value.pooling?.judges ?? {};
    // Of an entry that does not fit its shape, and where no form can be read, that fault is said once and by another check.
    const misshapen = new Set(entries.filter(({ value }) => value === undefined).map(({ id }) => id));
    const figures = judgedFigures(entries).filter(({ entry }) => !misshapen.has(entry.id));
    return figures.flatMap(({ entry, path, stands, judged }) =>
      stands
        ? Object.entries(judged).flatMap(([judge, text]) => {
            const { best, low, high } = figureNumbers({ in100: text });
            const what =
              judges[judge] === undefined
                ? `No judge ${judge} is described in making.yaml.`
                : 0 < low && low <= best && best <= high && high < 100
                  ? undefined
                  : `The judgment "${text}" is out of order, or says never or always.`;
            return what === undefined ? [] : [fault(entry, [...path, judge], what)];
          })
        : [fault(entry, path, `There is no figure ${path.join(' ')} of ${entry.id}.`)],
    );
  },
};

type JudgedFigure = { entry: Entry; path: YamlPath; stands: boolean; judged: Record<string, string> };

function judgedFigures(entries: readonly Entry[]): JudgedFigure[] {
  const signs = new Map(soundEntries(entries, 'sign').map(({ value }) => [value.id, value]));
  const alterations = new Map(soundEntries(entries, 'alteration').map(({ value }) => [value.id, value]));
  const kinds = new Set(
    soundEntries(entries, 'form').flatMap(({ value }) =>
      value.parts.map((part) => `${value.family}/${part.kind}`),
    ),
  );
  const shops = new Map(soundEntries(entries, 'shop').map(({ value }) => [value.id, value]));
  const madeOf = new Set(
    soundEntries(entries, 'making').flatMap(({ value }) =>
      figuresOf(value).map(({ path }) => path.join('/')),
    ),
  );
  return [
    ...soundEntries(entries, 'judgedSign').flatMap((entry) => [
      ...Object.entries(entry.value.shows).map(([state, judged]) => ({
        entry,
        path: ['shows', state],
        stands: hasRow(signs.get(entry.value.id), state),
        judged,
      })),
      ...(entry.value.campaign === undefined
        ? []
        : [
            {
              entry,
              path: ['campaign'],
              stands: signs.get(entry.value.id)?.campaign !== undefined,
              judged: entry.value.campaign,
            },
          ]),
    ]),
    ...soundEntries(entries, 'judgedAlteration').flatMap((entry) => {
      const about = alterations.get(entry.value.id);
      return [
        ...Object.entries(entry.value.happened).map(([when, judged]) => ({
          entry,
          path: ['happened', when],
          stands: about !== undefined && (when === 'period' || when === 'later'),
          judged,
        })),
        ...Object.entries(entry.value.changes).map(([kind, judged]) => ({
          entry,
          path: ['changes', kind],
          stands: about?.changes[kind] !== undefined,
          judged,
        })),
      ];
    }),
    ...soundEntries(entries, 'judgedShop').flatMap((entry) => {
      const about = shops.get(entry.value.id);
      return [
        ...(entry.value.share === undefined
          ? []
          : [{ entry, path: ['share'], stands: about !== undefined, judged: entry.value.share }]),
        ...Object.entries(entry.value.habits).map(([sign, judged]) => ({
          entry,
          path: ['habits', sign],
          stands: about?.habits.some((habit) => habit.sign === sign) ?? false,
          judged,
        })),
      ];
    }),
    ...soundEntries(entries, 'judgedMaking').flatMap((entry) =>
      Object.entries(entry.value.figures).map(([way, judged]) => ({
        entry,
        path: ['figures', way],
        stands: madeOf.has([entry.value.id, way].filter((each) => each !== '').join('/')),
        judged,
      })),
    ),
    ...(kinds.size === 0 ? [] : soundEntries(entries, 'judgedRenewal')).flatMap((entry) =>
      Object.entries(entry.value.renewed).map(([family, judged]) => ({
        entry,
        path: ['renewed', family],
        stands: kinds.has(`${family}/${entry.value.id}`),
        judged,
      })),
    ),
  ];
}

/** A row that the sign lacks though its cause asks for it is the fault of another check. */
function hasRow(sign: Sign | undefined, state: string): boolean {
  if (sign === undefined) return false;
  const cause = sign.hangsOn.startsWith('alteration/') ? 'alteration' : sign.hangsOn;
  return sign.shows[state] !== undefined || (causeStates[cause]?.includes(state) ?? false);
}

function fault(entry: Entry, path: YamlPath, what: string): KnowledgeFault {
  return faultIn('judged-fit', entry, path, {
    what,
    mend: 'Give the figure the name it has in its own file, the judge the letter it has in making.yaml, and best between lowest and highest.',
    example: '- { id: saw-arcs-circular, shows: { hand: { A: "2, 1–4", B: "3, 1–7" } } }',
  });
}
