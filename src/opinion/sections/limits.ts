import { statesWorth } from '../../engagement/lacksForWorth.ts';
import { capital, counted, listed } from '../../ground/words.ts';
import { needOn } from '../../knowledge/needOn.ts';
import type { Sign } from '../../knowledge/schema.ts';
import type { Block, Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { isExamined, paragraphs } from '../wording.ts';

const needsWords: Record<string, string> = {
  nothing: 'as it stands',
  'pulled-out': 'with the drawer pulled out',
  opened: 'with the door open',
  'from-behind': 'from behind',
  'turned-over': 'with the piece turned over',
  'seat-lifted': 'with the seat lifted out',
  'part-removed': 'with a part taken out or off, by the owner’s leave',
  'owners-leave': 'by the owner’s leave',
  laboratory: 'in a laboratory',
};

/** How far the opinion reaches: what was not seen, could not be told, and would be worth looking at. */
export function limitsSection(material: OpinionMaterial): Section {
  const { piece } = material;
  const own = [...paragraphs(piece.opinion.limits), ...paragraphs(piece.engagement.limits)];
  return {
    id: 'limits',
    title: 'Limiting conditions',
    blocks: [
      ...own.map((words): Block => ({ kind: 'paragraph', words })),
      ...(own.length === 0
        ? [
            {
              kind: 'paragraph',
              as: 'note',
              words: 'The examiner has written no limiting conditions.',
            } satisfies Block,
          ]
        : []),
      {
        kind: 'paragraph',
        words: statesWorth(piece)
          ? 'The worth that is stated rests on the opinion of what the piece is: the limiting conditions of the one are those of the other.'
          : 'This is an opinion on what the piece is. It states no value and is not an appraisal of value; where it feeds one, its limiting conditions go with it.',
      },
      { kind: 'list', items: notSeen(material) },
      ...worthALook(material),
    ],
  };
}

function notSeen(material: OpinionMaterial): string[] {
  const { piece, parts, signName, partName } = material;
  const findings = Object.values(piece.findings);
  const untold = findings.filter((each) => each.state === 'could-not-tell');
  const inPhoto = findings.filter((each) => each.inPhotoOnly).length;
  const seen = new Set([...findings, ...Object.values(piece.observations)].map((each) => each.part));
  const unseen = parts
    .filter((part) => !seen.has(part.id) && piece.parts[part.id]?.missing !== true)
    .map((part) => part.name);
  const inHand = `The piece was examined in the hand.${inPhoto === 0 ? '' : ` ${counted(inPhoto, 'finding')} ${inPhoto === 1 ? 'was' : 'were'} made in photographs only.`}`;
  const fromPhotos =
    'The piece was examined in photographs only: signs that a photograph can’t show were not available, and others are hints at best.';
  if (!isExamined(piece)) return ['No examination has been recorded.'];
  return [
    piece.mode === 'in-hand' ? inHand : fromPhotos,
    ...(untold.length === 0
      ? []
      : [
          `Could not tell: ${listed(untold.map((each) => `“${signName(each.sign)}” (${partName(each.part)})`))}.`,
        ]),
    ...(unseen.length === 0 ? [] : [`No finding was recorded of the ${listed(unseen)}.`]),
    'Signs that are not listed under the findings were not looked for; nothing follows from their not being named.',
    ...ownAdditions(material),
    'The weighing knows only the readings and the signs of its knowledge files. What lies outside them it can’t see.',
  ];
}

/** What is the examiner's own: signs and shop files added to the program's, and observations no sign covers. */
function ownAdditions({ piece, weighing, knowledge }: OpinionMaterial): string[] {
  const signs = [...new Set(Object.values(piece.findings).map((finding) => finding.sign))]
    .filter((id) => knowledge.signs[id]?.mine === true)
    .map((id) => `“${knowledge.signs[id]?.name}”`);
  const shops = (weighing?.shops ?? [])
    .filter(({ id }) => knowledge.shops[id]?.mine === true)
    .map(({ id }) => `“${knowledge.shops[id]?.name}”`);
  const named = [...signs, ...shops];
  const observations = Object.keys(piece.observations).length;
  return [
    ...(named.length === 0
      ? []
      : [
          `Not of the program’s knowledge files but the examiner’s own: ${listed(named)}. Their figures are the examiner’s alone.`,
        ]),
    ...(observations === 0
      ? []
      : [
          `${capital(counted(observations, 'observation'))} ${observations === 1 ? 'is' : 'are'} the examiner’s own and covered by no sign: how far each would be expected of each kind of piece is the examiner’s word, and no one else has checked it.`,
        ]),
  ];
}

function worthALook({ weighing, form, parts, signName, partName }: OpinionMaterial): Block[] {
  const looks = (weighing?.nextLooks ?? []).slice(0, 5);
  if (looks.length === 0) return [];
  const needOf = (look: (typeof looks)[number]) =>
    needOn(look.needs as Sign['needs'], parts.find((part) => part.id === look.part)?.kind, form);
  return [
    { kind: 'heading', words: 'What would be worth looking at next' },
    {
      kind: 'list',
      items: looks.map(
        (look) =>
          `${signName(look.sign)}, ${partName(look.part)}: ${look.minutes < 1 ? 'less than a minute' : counted(look.minutes, 'minute')}, ${needsWords[needOf(look)] ?? look.needs}.${look.caution === undefined ? '' : ` ${look.caution}`}`,
      ),
    },
  ];
}
