import { hasEvidence } from '../piece/hasEvidence.ts';
import { lastRevision } from '../piece/issued.ts';
import type { Piece } from '../piece/piece.ts';
import type { ReadingId } from '../piece/readings.ts';
import { askedByUse, unanswered } from './askedByUse.ts';
import { daysOfUse } from './daysOfUse.ts';
import { lacksForWorth } from './lacksForWorth.ts';

/** A page of the piece, and the heading or field on it, where something is filled in. */
export type WhereFilled = { page: 'engagement' | 'examination' | 'worth' | 'opinion' | 'sign'; at: string };

/** Something an opinion lacks: without a `must` it is printed as not stated. */
export type Missing = { id: string; must: boolean; words: string; where: WhereFilled };

/** What the findings say, as far as signing asks: left out where nothing was weighed. */
export type WeighedForSigning = {
  leading: ReadingId;
  /** Findings that do not fit, by their keys, with a name to print. */
  contradictions: readonly { key: string; name: string }[];
};

/**
 * What an opinion lacks before it is signed: first what must be there, then what would be printed as not stated or open.
 *
 * @param weighed  what the findings say; without it neither a departure from it nor open contradictions are asked for
 * @source what a report must state of the examiner, the day, interest and limits: USPAP standards rule 8-2, from memory
 */
export function missingForSigning(piece: Piece, weighed?: WeighedForSigning): Missing[] {
  const all = [
    ...mustBeThere(piece, weighed),
    ...ofUse(piece),
    ...printedAsNotStated(piece),
    ...ofWorth(piece),
    ...leftOpen(piece, weighed),
  ];
  return all.filter(({ must }) => must).concat(all.filter(({ must }) => !must));
}

const missing = (
  is: boolean,
  id: string,
  must: boolean,
  words: string,
  page: WhereFilled['page'],
  at: string,
): Missing[] => (is ? [{ id, must, words, where: { page, at } }] : []);

function mustBeThere(piece: Piece, weighed: WeighedForSigning | undefined): Missing[] {
  const { opinion } = piece;
  const departs =
    weighed !== undefined && opinion.reading !== undefined && opinion.reading !== weighed.leading;
  const again = lastRevision(piece) !== undefined;
  return [
    ...missing(
      opinion.reading === undefined,
      'reading',
      true,
      'The reading you conclude on',
      'opinion',
      'conclusion',
    ),
    ...missing(blank(opinion.conclusion), 'conclusion', true, 'The conclusion', 'opinion', 'conclusion'),
    ...missing(blank(opinion.reasons), 'reasons', true, 'Your reasons', 'opinion', 'conclusion'),
    ...missing(
      departs && blank(opinion.departure),
      'departure',
      true,
      'Why you depart from what the findings say',
      'opinion',
      'conclusion',
    ),
    ...missing(
      again && blank(opinion.isNew),
      'is-new',
      true,
      'What is new in this revision',
      'sign',
      'revision',
    ),
    ...missing(again && blank(opinion.why), 'why', true, 'Why this revision is made', 'sign', 'revision'),
  ];
}

/** What the intended use asks for and is blank: its own items must be answered, if only by “none”; those of a worth are printed as not stated. */
function ofUse(piece: Piece): Missing[] {
  const { purpose } = piece.engagement;
  const own = new Set(purpose === undefined ? [] : askedByUse[purpose].map(({ id }) => id));
  return [
    ...unanswered(piece).flatMap(({ id, asks }) =>
      missing(true, `asked:${id}`, own.has(id), asks, 'engagement', 'asked-by-use'),
    ),
    ...daysOfUse(piece.engagement).flatMap((words) =>
      missing(true, 'days-of-use', false, words, 'engagement', 'days'),
    ),
  ];
}

function printedAsNotStated(piece: Piece): Missing[] {
  const { engagement } = piece;
  const none = !hasEvidence(piece);
  const noPlates = !Object.values(piece.photos).some((photo) => photo.asPlate);
  const of = (is: boolean, id: string, words: string, at: string) =>
    missing(is, id, false, words, 'engagement', at);
  return [
    ...of(blank(engagement.client), 'client', 'The client', 'who-asks'),
    ...of(engagement.purpose === undefined, 'purpose', 'The intended use', 'what-for'),
    ...of(blank(engagement.mayRely), 'may-rely', 'The intended users', 'what-for'),
    ...of(engagement.examinedOn === undefined, 'examined-on', 'The day the piece was examined', 'days'),
    ...of(engagement.effectiveOn === undefined, 'effective-on', 'The effective date', 'days'),
    ...of(
      blank(engagement.interest),
      'interest',
      'Your own interest in the piece, or that you have none',
      'terms',
    ),
    ...of(blank(engagement.examiner), 'examiner', 'Your name as the examiner', 'examiner'),
    ...of(
      blank(engagement.examinerQualification),
      'qualification',
      'Your training and qualifications',
      'examiner',
    ),
    ...missing(none, 'findings', false, 'Findings: none has been recorded', 'examination', ''),
    ...missing(noPlates, 'plates', false, 'Photographs: none will be printed', 'examination', ''),
    ...missing(
      blank(piece.opinion.limits) && blank(engagement.limits),
      'limits',
      false,
      'The limits of the opinion',
      'opinion',
      'conclusion',
    ),
  ];
}

/** What of a stated worth is blank; what the engagement holds is asked for there. */
function ofWorth(piece: Piece): Missing[] {
  return lacksForWorth(piece)
    .filter(({ page }) => page === 'worth')
    .flatMap(({ id, words }) =>
      missing(true, `worth:${id}`, false, `Of the worth: ${words}`, 'worth', 'value-conclusion'),
    );
}

function leftOpen(piece: Piece, weighed: WeighedForSigning | undefined): Missing[] {
  return (weighed?.contradictions ?? []).flatMap(({ key, name }) =>
    missing(
      blank(piece.opinion.resolutions[key] ?? ''),
      `open:${key}`,
      false,
      `How you settle what does not fit: ${name}`,
      'opinion',
      'jars',
    ),
  );
}

function blank(words: string): boolean {
  return words.trim() === '';
}
