import type { IssuedAnswer } from '../../server/issuedRoutes.ts';

/** What stands between the last revision and the piece as it is: words, and what can be done. */
export type Band = {
  revision: number;
  words: string;
  compare: boolean;
  /** The number of the revision that could be begun, or is being written. */
  next: number;
  can: 'begin' | 'sign' | 'nothing';
};

/**
 * The band on every page of a piece whose last revision no longer says all that the piece says; undefined where it does,
 * or where nothing was signed.
 *
 * @param status  whether the opinion is signed as it stands, or a next revision is being written
 */
export function bandWords(issued: IssuedAnswer | undefined, status: 'draft' | 'signed'): Band | undefined {
  const last = issued?.revisions.at(-1);
  if (issued === undefined || last === undefined) return undefined;
  const { revision } = last;
  const next = revision + 1;
  if (issued.since === null)
    return {
      revision,
      next,
      words: `The stored files of revision ${revision} are not those that were signed. Run npx underside verify, and put the folder “issued” back from a backup.`,
      compare: false,
      can: 'nothing',
    };
  const { piece, readingsMoved } = issued.since;
  const can = status === 'draft' ? 'sign' : 'begin';
  if (!piece.same)
    return { revision, next, words: `Changed since revision ${revision}.`, compare: true, can };
  if (readingsMoved)
    return {
      revision,
      next,
      words: `The findings are those of revision ${revision}, but the program’s knowledge has changed since, and its readings or years with it.`,
      compare: true,
      can,
    };
  if (status === 'signed') return undefined;
  return {
    revision,
    next,
    words: `Revision ${next} is being written. Nothing differs from revision ${revision} yet.`,
    compare: false,
    can,
  };
}
