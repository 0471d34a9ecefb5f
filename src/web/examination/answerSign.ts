import type { Change, EventKind, Json } from '../../piece/event.ts';
import { type Finding, type FindingState, findingKey, type Sureness } from '../../piece/finding.ts';

/** An act ready to be recorded. */
export type Act = { kind: EventKind; changes: Change[] };

/** What is being answered: a sign, on a part or on the whole piece. */
export type Question = { sign: string; part?: string | undefined };

/**
 * The act of touching an answer: it records the answer, changes it, or (the same answer again) withdraws it.
 * Sureness, words and photos of an earlier answer stay with the new one.
 *
 * @param before      the finding there was, if any
 * @param photoOnly   true where the piece itself is not in the room
 */
export function answerSign(
  question: Question,
  before: Finding | undefined,
  state: FindingState,
  photoOnly: boolean,
): Act {
  const id = findingKey(question.sign, question.part);
  if (before?.state === state) return { kind: 'finding-withdrawn', changes: [{ path: ['findings', id] }] };
  const kept = before ?? freshFinding(id, question, photoOnly);
  return recordFinding({ ...kept, state });
}

/** The act of saying how sure one is of an answer already given. */
export function sayHowSure(before: Finding, sure: Sureness): Act {
  return recordFinding({ ...before, sure });
}

/** The act of putting the examiner's own words to a finding. */
export function putInWords(before: Finding, words: string): Act {
  return recordFinding({ ...before, words });
}

/** The act of saying whether the sign was seen in the hand or only in a photograph. */
export function sayWhereSeen(before: Finding, inPhotoOnly: boolean): Act {
  return recordFinding({ ...before, inPhotoOnly });
}

/** The act of tying photos to a finding, or untying them. */
export function tiePhotos(before: Finding, photos: string[]): Act {
  return recordFinding({ ...before, photos });
}

function recordFinding(finding: Finding): Act {
  return { kind: 'finding-recorded', changes: [{ path: ['findings', finding.id], to: finding as Json }] };
}

function freshFinding(id: string, question: Question, photoOnly: boolean): Omit<Finding, 'state'> {
  const part = question.part === undefined ? {} : { part: question.part };
  const sure: Sureness = photoOnly ? 'hint' : 'plain';
  return { id, sign: question.sign, ...part, sure, inPhotoOnly: photoOnly, words: '', photos: [] };
}
