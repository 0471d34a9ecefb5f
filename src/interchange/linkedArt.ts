import { capital } from '../ground/words.ts';
import { idWords } from '../knowledge/idWords.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { Owner } from '../piece/owner.ts';
import type { Piece } from '../piece/piece.ts';
import { type Term, term, terms } from './linkedArtTerms.ts';

/** A Linked Art record: one file, with its own context and id. */
export type LinkedArtRecord = { '@context': string; id: string; type: string; _label: string } & Record<
  string,
  unknown
>;

/** A part that is told apart from the piece, because it was made at another time, of other wood, or is gone. */
export type PartToldApart = { id: string; name: string; why: string };

/**
 * A piece as Linked Art: the object, each part that is not of its making as an object of its own, and each holding as a provenance activity.
 * A worth is an assignment by the examiner and no dimension; a rival attribution is an assignment, too.
 *
 * @param base   the address under which the records will lie, without a slash at its end
 * @param apart  the parts that the weighing reads as not of the making
 * @returns by file name
 * @source Linked Art 1.0 (linked.art), its documentation and schemas of July 2026, read; shapes in our own words
 */
export function linkedArt(
  piece: Piece,
  knowledge: Pick<Knowledge, 'forms' | 'woods'>,
  base: string,
  apart: readonly PartToldApart[],
): Map<string, LinkedArtRecord> {
  const objectId = `${base}/object`;
  const label = piece.title.trim() || 'A piece of furniture';
  const whole = { id: objectId, type: 'HumanMadeObject', _label: label };
  const object: LinkedArtRecord = {
    ...record(objectId, 'HumanMadeObject', label),
    ...classified(typeOf(piece, knowledge)),
    identified_by: [
      named(label),
      { type: 'Identifier', content: piece.id, classified_as: [terms.localNumber] },
    ],
    ...list(
      'made_of',
      woodsOf(piece, knowledge, base, (id) => !apart.some((part) => part.id === id)),
    ),
    ...list(
      'dimension',
      Object.values(piece.measures).map((measure) => dimension(measure, piece, knowledge)),
    ),
    ...list('referred_to_by', statementsOf(piece)),
    produced_by: production(piece, base),
    ...list('attributed_by', worthOf(piece, base)),
  };
  const parts = apart.map(({ id, name, why }): [string, LinkedArtRecord] => [
    `part-${id}.json`,
    {
      ...record(`${base}/part/${id}`, 'HumanMadeObject', `${capital(name)} of ${label}`),
      identified_by: [named(`${capital(name)} of ${label}`)],
      ...list(
        'made_of',
        woodsOf(piece, knowledge, base, (part) => part === id),
      ),
      referred_to_by: [statement(terms.condition, why)],
      part_of: whole,
    },
  ]);
  const holdings = Object.values(piece.owners).map((owner, index): [string, LinkedArtRecord] => [
    `provenance-${index + 1}.json`,
    holding(owner, `${base}/provenance/${index + 1}`, whole, base),
  ]);
  return new Map([['object.json', object], ...parts, ...holdings]);
}

function record(id: string, type: string, label: string): LinkedArtRecord {
  return { '@context': 'https://linked.art/ns/v1/linked-art.json', id, type, _label: label };
}

function list(name: string, items: readonly unknown[]): Record<string, readonly unknown[]> {
  return items.length === 0 ? {} : { [name]: items };
}

const named = (content: string) => ({ type: 'Name', content, classified_as: [terms.primaryName] });
const statement = (kind: Term, content: string) => ({
  type: 'LinguisticObject',
  content,
  classified_as: [kind],
});
const classified = (type: Term | undefined) => (type === undefined ? {} : { classified_as: [type] });

function typeOf(piece: Piece, { forms }: Pick<Knowledge, 'forms'>): Term | undefined {
  const aat = forms[piece.form]?.aat;
  return aat === undefined
    ? undefined
    : { ...term(`${aat.id}`, aat.term), classified_as: [terms.typeOfWork] };
}

/** Woods once each; one without a term of the thesaurus has an address of our own. */
function woodsOf(
  piece: Piece,
  { woods }: Pick<Knowledge, 'woods'>,
  base: string,
  of: (part: string) => boolean,
) {
  const named = [...new Set(Object.values(piece.parts).flatMap((part) => (of(part.id) ? part.woods : [])))];
  return named.map((id) => {
    const wood = woods?.[id];
    const label = wood?.name ?? capital(idWords(id));
    return wood?.aat === undefined
      ? { id: `${base}/wood/${id}`, type: 'Material', _label: label }
      : { ...term(`${wood.aat.id}`, label), type: 'Material' };
  });
}

function dimension(
  { id, mm, sigmaMm }: Piece['measures'][string],
  piece: Piece,
  { forms }: Pick<Knowledge, 'forms'>,
) {
  const name = forms[piece.form]?.measures.find((each) => each.id === id)?.name ?? idWords(id);
  const kind = (['height', 'width', 'depth', 'length', 'thickness', 'diameter'] as const).find((each) =>
    name.toLowerCase().includes(each),
  );
  return {
    type: 'Dimension',
    _label: capital(name),
    value: mm,
    // Two standard uncertainties either way: about 95 in 100.
    ...(sigmaMm === undefined || sigmaMm === 0
      ? {}
      : { lower_value_limit: mm - 2 * sigmaMm, upper_value_limit: mm + 2 * sigmaMm }),
    unit: terms.millimeters,
    ...(kind === undefined ? {} : { classified_as: [terms[kind]] }),
  };
}

function statementsOf(piece: Piece) {
  const damage = Object.values(piece.damages).map(({ term: what, where, part }) =>
    [what.trim(), part === undefined ? '' : `on the ${idWords(part)}`, where.trim()]
      .filter((each) => each !== '')
      .join(', '),
  );
  return [
    ...[piece.condition.words.trim(), damage.join('; ')]
      .filter((each) => each !== '')
      .map((words) => statement(terms.condition, words)),
    ...[piece.opinion.conclusion.trim()]
      .filter((each) => each !== '')
      .map((content) => ({ type: 'LinguisticObject', content })),
  ];
}

function production(piece: Piece, base: string) {
  const { opinion, claim } = piece;
  const maker = (claim.maker ?? '').trim();
  return {
    type: 'Production',
    _label: 'Making',
    ...(opinion.years === undefined ? {} : { timespan: between(opinion.years) }),
    ...(opinion.place.trim() === ''
      ? {}
      : { took_place_at: [{ id: `${base}/place-of-making`, type: 'Place', _label: opinion.place.trim() }] }),
    // What it is said to be is somebody's claim, and is kept as one.
    ...(maker === ''
      ? {}
      : {
          attributed_by: [
            {
              type: 'AttributeAssignment',
              _label: 'Said to be by this maker',
              assigned_property: 'part',
              assigned: {
                type: 'Production',
                carried_out_by: [{ id: `${base}/maker`, type: 'Group', _label: maker }],
              },
            },
          ],
        }),
  };
}

function between([first, last]: readonly [number, number]) {
  return {
    type: 'TimeSpan',
    begin_of_the_begin: `${year(first)}-01-01T00:00:00Z`,
    end_of_the_end: `${year(last)}-12-31T23:59:59Z`,
  };
}

const year = (number: number) => `${number}`.padStart(4, '0');

/** The worth as the examiner's assignment, as of the effective date; both ends where it is a range. */
function worthOf({ worth, engagement, opinion }: Piece, base: string) {
  const { lowCents, highCents, definition } = worth;
  if (lowCents === undefined) return [];
  const examiner = engagement.examiner.trim() || opinion.signedBy.trim();
  return [...new Set([lowCents, highCents ?? lowCents])].map((cents) => ({
    type: 'AttributeAssignment',
    _label:
      highCents === undefined || highCents === lowCents
        ? 'Worth'
        : cents === lowCents
          ? 'Worth, lower end'
          : 'Worth, upper end',
    classified_as: [terms.appraising],
    ...(examiner === ''
      ? {}
      : { carried_out_by: [{ id: `${base}/examiner`, type: 'Person', _label: examiner }] }),
    ...(engagement.effectiveOn === undefined
      ? {}
      : {
          timespan: {
            type: 'TimeSpan',
            begin_of_the_begin: `${engagement.effectiveOn}T00:00:00Z`,
            end_of_the_end: `${engagement.effectiveOn}T23:59:59Z`,
          },
        }),
    ...(definition.trim() === '' ? {} : { referred_to_by: [statement(terms.valuation, definition.trim())] }),
    assigned_property: 'dimension',
    assigned: { type: 'MonetaryAmount', value: cents / 100, currency: terms.dollars },
  }));
}

/** One holding: how title, or custody alone, came to somebody. */
function holding(owner: Owner, id: string, whole: object, base: string): LinkedArtRecord {
  const name = owner.name.trim() || 'somebody not named';
  const who = {
    id: `${base}/holder/${owner.id}`,
    type: owner.role === 'owner' || owner.role === 'custodian' ? 'Person' : 'Group',
    _label: name,
  };
  const holdsTitle =
    owner.role !== 'custodian' && owner.role !== 'agent' && owner.how !== 'loan' && owner.how !== 'consigned';
  return {
    ...record(id, 'Activity', `To ${name}`),
    classified_as: [terms.provenanceActivity],
    identified_by: [named(`To ${name}`)],
    ...(owner.began === undefined ? {} : { timespan: between(owner.began) }),
    ...list(
      'referred_to_by',
      owner.source.trim() === '' ? [] : [statement(terms.provenance, owner.source.trim())],
    ),
    part: [
      holdsTitle
        ? { type: 'Acquisition', transferred_title_of: [whole], transferred_title_to: [who] }
        : { type: 'TransferOfCustody', transferred_custody_of: [whole], transferred_custody_to: [who] },
    ],
  };
}
