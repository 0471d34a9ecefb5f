import { counted } from '../../ground/words.ts';
import type { BackupStatus } from '../../server/backup/backupKeeper.ts';
import { dayWords } from '../../units/days.ts';
import { momentWithZone } from '../record/identity.ts';
import { clockWords } from '../shell/dayWords.ts';

/** What there is of back-ups, in words. */
export function copyWords({
  last,
  copies,
  folder,
}: Pick<BackupStatus, 'last' | 'copies' | 'folder'>): string {
  if (last === null) return `There is no back-up in ${folder} yet.`;
  const here = momentWithZone(new Date(last.madeAt));
  const held = `${counted(last.acts, 'act')}, ${counted(last.files, 'photo or other file', 'photos and other files')}`;
  const lacks =
    last.missing === 0 ? '' : ` ${counted(last.missing, 'photo')} that the record names could not be found.`;
  const all = copies === 1 ? 'It is the only one.' : `There are ${copies} in all.`;
  return `The newest is of ${dayWords(here.slice(0, 10))}, ${clockWords(here)}: ${held}.${lacks} ${all}`;
}
