import { printedReminders } from '../../engagement/purposeReminders.ts';
import type { Purpose } from '../../piece/engagement.ts';
import { materialsNamed, printedMaterialSentences } from '../../piece/protectedMaterials.ts';
import type { Block, Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';

/** What can hurt: hazards of this piece, and those of old furniture that can bear on it. */
export function cautionsSection({ piece, form, parts, knowledge }: OpinionMaterial): Section {
  const signs = Object.values(piece.findings).map((finding) => knowledge.signs[finding.sign]?.caution);
  const all = [...new Set([...(form?.cautions ?? []), ...signs])].filter((each) => each !== undefined);
  const ofThis = all.filter((each) => !all.some((other) => other !== each && saysMore(other, each)));
  const seating = form?.family === 'seating';
  const bears = {
    upholstery: parts.some((part) => part.kind === 'upholstery'),
    seating,
    other: !seating,
  };
  return {
    id: 'cautions',
    title: 'Cautions',
    blocks: [
      ...(ofThis.length === 0
        ? []
        : [
            { kind: 'heading', words: 'Of this piece' } satisfies Block,
            { kind: 'list', items: ofThis } satisfies Block,
          ]),
      { kind: 'heading', words: 'Of old furniture' },
      {
        kind: 'list',
        items: usual
          .filter(([, , only]) => only === undefined || bears[only])
          .map(([what, words]) => [{ strong: `${what}. ` }, words]),
      },
      { kind: 'paragraph', as: 'note', words: deferring },
    ],
  };
}

/** What is for others to say: law and practice, as reminders. */
export function lawSection({ piece }: OpinionMaterial): Section {
  const { purpose } = piece.engagement;
  return {
    id: 'law',
    title: 'Law and practice, as a reminder',
    appendix: true,
    blocks: [
      {
        kind: 'list',
        items: [
          ...(purpose === undefined || purposeCautions[purpose] === undefined
            ? []
            : [purposeCautions[purpose]]),
          ...printedReminders(purpose),
          ...materialsNamed(materialWords(piece)).flatMap(printedMaterialSentences),
          ...law,
        ],
      },
      {
        kind: 'paragraph',
        as: 'note',
        words:
          'The rules follow general practice and change: ask the office named. Nothing is cleared here for sale or shipping.',
      },
    ],
  };
}

/** What was entered of what the piece is made of. */
function materialWords(piece: OpinionMaterial['piece']): string[] {
  return Object.values(piece.parts).flatMap(({ woods, words }) => [...woods, words]);
}

/** True of a caution that says all of another, and goes on. */
function saysMore(caution: string, than: string): boolean {
  return caution.startsWith(than.replace(/\.$/u, ''));
}

const deferring =
  'These cautions name dangers and defer to those licensed to deal with them; they clear nothing for handling, cleaning, sale or shipping.';

/** What, its words, and what of a piece it bears on alone. */
const usual: readonly (readonly [string, string, ('upholstery' | 'seating' | 'other')?])[] = [
  [
    'Lead',
    'Old paint, putty and fillers may hold lead. No sanding, heating or scraping; wash hands; keep children away. Testing and removal are for a licensed contractor.',
  ],
  [
    'Arsenic and other poisons',
    'Green paints and papers, old upholstery and pest treatments may hold arsenic, mercury or DDT. A white bloom may be residue and not dust. Wear gloves, raise no dust, and ask a conservator or a laboratory.',
  ],
  [
    'Mold and pests',
    'Fresh pale dust under holes may mean live beetles; a musty seat may hold mold. Isolate the piece, and leave treatment to a conservator or a licensed pest controller.',
  ],
  [
    'Old upholstery',
    'Tacks, broken springs and brittle covers cut: never push a bare hand behind a seat. Old fillings burn easily.',
    'upholstery',
  ],
  [
    'Lifting and toppling',
    'Lift a chair by its seat rails and never by arms or crest. An old joint may let go without warning: a piece that was not tried should not be sat on.',
    'seating',
  ],
  [
    'Lifting and toppling',
    'An old joint may let go without warning: empty the piece, have a second person, and lift by the frame, never by top, door or handle.',
    'other',
  ],
  [
    'Cleaning',
    'Nothing in this opinion advises treatment. Old surfaces are evidence and cannot be put back: before any cleaning or repair ask a furniture conservator.',
  ],
];

const law: readonly string[] = [
  'Some woods, ivory, tortoiseshell and other animal materials are protected: sale, and crossing a border with them, may need papers or be forbidden. Ask the wildlife authority of the place (in the United States the Fish and Wildlife Service; elsewhere the national CITES authority) before either. No species is certified here.',
  'Export of old works, and title to lost or looted ones, are matters of local law. This opinion does not clear title.',
  'What an opinion may be used for, and who may give it, is set by local law and by the rules of the profession. For tax, estate or court use ask the adviser, office or court first.',
];

const purposeCautions: Partial<Record<Purpose, string>> = {
  estate:
    'Estates are often taxed, and the law says who may value for that and how: ask the family’s lawyer or the local office.',
  gift: 'A gift can be taxed: ask the donor’s lawyer or the local office.',
  damage:
    'What a policy or a contract of carriage pays for, and what has to be kept and shown, stands in its own words: ask the adjuster before anything is repaired.',
  wildlife:
    'Whether a piece with a protected material may be sold, sent or carried over a border is for the wildlife authority to say. This opinion says what the examiner found; it is no permit and clears nothing.',
  donation:
    'Where a gift is set against tax, the law asks for a qualified appraiser, set forms and set days: ask a tax adviser under the donor’s own law.',
  division:
    'How heirs may divide is a matter of the will and of local law. This opinion says what the piece is, not who gets it.',
  court: 'A court has its own rules for experts; this document does not claim to meet them.',
  insurance: 'The policy says what worth is insured and who may attest it: ask the insurer for the wording.',
  sale: 'What a seller must tell a buyer is local law: ask before the piece is offered.',
};
