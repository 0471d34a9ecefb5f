import { counted } from '../../ground/words.ts';

/** What a warning hangs on: moments in milliseconds; undefined where there was none. */
export type BackupStanding = {
  now: number;
  /** When the first act of the user's own was recorded. */
  firstAct: number | undefined;
  lastCopy: number | undefined;
  /** The newest attempt, where it failed. */
  failed: { at: number; message: string } | undefined;
};

/** A plain warning, to be shown on every screen. */
export type BackupWarning = { code: 'none' | 'old' | 'failed'; words: string };

const day = 86_400_000;

/** After so many days a copy is old. */
const oldAfterDays = 7;

/** What a user should be warned of, or undefined where all is well. A record begun today is given its day. */
export function backupWarning({
  now,
  firstAct,
  lastCopy,
  failed,
}: BackupStanding): BackupWarning | undefined {
  if (firstAct === undefined) return undefined;
  if (failed !== undefined)
    return {
      code: 'failed',
      words: `The last back-up was not made. ${failed.message} ${lastWords(now, lastCopy)}`,
    };
  if (lastCopy === undefined)
    return now - firstAct < day
      ? undefined
      : { code: 'none', words: 'There is no back-up of this record: if this disk fails, all of it is lost.' };
  if (now - lastCopy <= oldAfterDays * day) return undefined;
  return { code: 'old', words: lastWords(now, lastCopy) };
}

function lastWords(now: number, lastCopy: number | undefined): string {
  if (lastCopy === undefined) return 'There is no earlier one.';
  const days = Math.floor((now - lastCopy) / day);
  if (days < 1) return 'The newest back-up is less than a day old.';
  return `The newest back-up is ${counted(days, 'day')} old.`;
}
