import { askedOf } from '../../knowledge/askedOf.ts';
import type { KnownOfPiece } from '../../knowledge/canApply.ts';
import type { Form, Knowledge } from '../../knowledge/schema.ts';
import { type Finding, findingKey } from '../../piece/finding.ts';

type KnownSign = Knowledge['signs'][string];

/** A sign as it is offered on one part, with what was found of it. */
export type OfferedSign = { sign: KnownSign; key: string; finding: Finding | undefined };

/** The signs of one family offered on a part. */
export type OfferedFamily = { id: string; name: string; offered: OfferedSign[] };

export type SignFilter = 'all' | 'not-yet' | 'answered';

/** The kind that stands for the piece as a whole. */
export const wholeKind = 'whole';

/**
 * The signs that can be on a part of this kind, by family, in the order of the knowledge files.
 *
 * @param kind   kind of part, or `whole`
 * @param part   id of the part; left out for the whole piece
 * @param words  only signs whose name or look has every one of these words; all when empty
 * @param asOf   the findings the filter goes by; later answers then stay in sight
 * @param known  leaves out what can't be on such a part of this piece, likewise
 * @param form   leaves out what is not asked of this form, unless it was answered; nothing is left out without it
 */
export function signsOnPart(
  knowledge: Pick<Knowledge, 'families' | 'signs'>,
  findings: Record<string, Finding>,
  kind: string,
  part: string | undefined,
  filter: SignFilter = 'all',
  words = '',
  asOf: Record<string, Finding> = findings,
  form?: Pick<Form, 'id' | 'family' | 'alterations' | 'features' | 'makes'>,
  known?: KnownOfPiece,
): OfferedFamily[] {
  const asked = part === undefined ? kind : { id: part, kind };
  const isOffered = (sign: KnownSign) =>
    sign.on.includes(kind) &&
    (form === undefined ||
      askedOf(sign, asked, form, known) ||
      findings[findingKey(sign.id, part)] !== undefined);
  const families = knowledge.families.map((family) => {
    const offered = family.signs
      .map((id) => knowledge.signs[id])
      .filter((sign): sign is KnownSign => sign !== undefined && isOffered(sign))
      .filter((sign) => hasWords(sign, words))
      .map((sign) => offer(sign, findings, part))
      .filter((one) => passes(asOf[one.key], filter));
    return { id: family.id, name: family.name, offered };
  });
  return families.filter((family) => family.offered.length > 0);
}

/** How many of the offered signs were looked for, of how many. */
export function howFarLooked(families: readonly OfferedFamily[]): { looked: number; of: number } {
  const all = families.flatMap((family) => family.offered);
  return { looked: all.filter((one) => one.finding !== undefined).length, of: all.length };
}

/** True if the sign's name or its look holds every one of the words, wherever they stand. */
export function hasWords(sign: Pick<KnownSign, 'name' | 'look'>, words: string): boolean {
  const text = `${sign.name} ${sign.look}`.toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}

function offer(sign: KnownSign, findings: Record<string, Finding>, part: string | undefined): OfferedSign {
  const key = findingKey(sign.id, part);
  return { sign, key, finding: findings[key] };
}

function passes(before: Finding | undefined, filter: SignFilter): boolean {
  if (filter === 'all') return true;
  return (before !== undefined) === (filter === 'answered');
}
