/** What decides whether a copy is due: moments in milliseconds; undefined where there was none. */
export type BackupMoments = {
  now: number;
  lastCopy: number | undefined;
  lastWrite: number;
  lastFailure: number | undefined;
};

const minute = 60_000;

/** Why the program should make a copy by itself now, or undefined where it should not. */
export function backupDue({
  now,
  lastCopy,
  lastWrite,
  lastFailure,
}: BackupMoments): 'daily' | 'after-work' | undefined {
  if (lastFailure !== undefined && now - lastFailure < 60 * minute) return undefined;
  const quiet = now - lastWrite;
  if ((lastCopy === undefined || !sameDay(lastCopy, now)) && quiet >= 2 * minute) return 'daily';
  if (lastCopy !== undefined && lastWrite > lastCopy && quiet >= 15 * minute) return 'after-work';
  return undefined;
}

function sameDay(a: number, b: number): boolean {
  return new Date(a).toDateString() === new Date(b).toDateString();
}
