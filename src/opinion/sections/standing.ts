import { drawForm } from '../../drawing/drawForm.ts';
import { hatchWords, type Standing, standings, standingWords } from '../../drawing/hatching.ts';
import { sidesUnderAll } from '../../drawing/sides.ts';
import { capital, listed } from '../../ground/words.ts';
import { formatYears } from '../../units/years.ts';
import { outOf, toldShares } from '../../weighing/probabilityWords.ts';
import { hatchSwatch } from '../hatchSwatch.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';

/** Which parts belong together: on the drawing by hatching, and part by part in words. */
export function standingSection(material: OpinionMaterial): Section | undefined {
  const { weighing, drawing } = material;
  if (weighing === undefined && drawing.length === 0) return undefined;
  return {
    id: 'parts',
    title: 'The parts, and how they stand',
    blocks: [...drawingBlocks(material), ...tableBlocks(material)],
  };
}

function drawingBlocks({ drawing, weighing, piece, form }: OpinionMaterial): Block[] {
  if (drawing.length === 0) return [];
  const sides =
    form === undefined
      ? ''
      : sidesUnderAll(
          drawForm(form, piece.features, {}).views.map(({ view }) => view),
          form.sides,
        );
  const shown = standings.filter((each) => weighing?.parts.some((part) => part.standing === each));
  const measured = Object.keys(piece.measures).length > 0;
  return [
    { kind: 'pictures', pictures: drawing },
    ...(shown.length === 0
      ? []
      : [
          {
            kind: 'key',
            title: 'What the hatching means',
            entries: shown.map((each) => ({
              svg: hatchSwatch(each),
              words: `${standingWords[each]} (${hatchWords[each]}): ${partsThat(weighing, each)}`,
            })),
          } satisfies Block,
        ]),
    {
      kind: 'paragraph',
      as: 'note',
      words: [
        sides,
        measured
          ? 'Drawn from the measurements taken of this piece, the rest as is usual for its form.'
          : 'Drawn as is usual for its form; the piece was not measured.',
        'It shows where parts are, not what they look like.',
      ]
        .filter((each) => each !== '')
        .join(' '),
    },
  ];
}

/** The parts of one standing by name; where most are of the making, the rest are named and these are not. */
function partsThat(weighing: OpinionMaterial['weighing'], standing: Standing): string {
  const parts = weighing?.parts ?? [];
  const names = parts.filter((part) => part.standing === standing).map((part) => part.name);
  if (names.length === parts.length) return 'every part';
  return standing === 'of-the-making' && names.length > 6 ? 'all parts not named below' : listed(names);
}

function tableBlocks({ weighing }: OpinionMaterial): Block[] {
  if (weighing === undefined) return [];
  const looked = weighing.parts.filter((part) => part.standing !== 'not-looked-at');
  const unseen = weighing.parts.filter((part) => part.standing === 'not-looked-at').map(({ name }) => name);
  const rows = looked.map((part): Words[] => [
    capital(part.name),
    part.words,
    formatYears([Math.round(part.years.p90[0]), Math.round(part.years.p90[1])]),
    `${part.looked}`,
  ]);
  return [
    ...(rows.length === 0
      ? []
      : [
          {
            kind: 'table',
            caption: 'How each part that was looked at stands, by the weighing',
            columns: [
              { name: 'Part', share: 3 },
              { name: 'Standing', share: 6 },
              { name: `Made, ${outOf(toldShares.most)}`, share: 2.3 },
              { name: 'Findings', share: 1.2, end: true },
            ],
            groups: [{ rows }],
          } satisfies Block,
        ]),
    ...(unseen.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            as: 'note',
            words: `Not looked at, and so not called anything: the ${listed(unseen)}. The readings allow for how often such a part is renewed.`,
          } satisfies Block,
        ]),
  ];
}
