import { counted } from '../../ground/words.ts';
import { idWords } from '../../knowledge/idWords.ts';
import type { Sign } from '../../knowledge/schema.ts';

/** A kind of part, in words. */
export function kindWords(kind: string): string {
  return kind === 'whole' ? 'the piece as a whole' : idWords(kind);
}

/** How long a look takes. */
export function minutesWords(minutes: number): string {
  if (minutes < 1) return 'less than a minute';
  return counted(minutes, 'minute');
}

/** What must be done before a sign can be looked for. */
export function needsWords(needs: Sign['needs']): string {
  const words: Record<Sign['needs'], string> = {
    nothing: 'as it stands',
    'turned-over': 'turned over',
    'seat-lifted': 'with the seat lifted out',
    'part-removed': 'with a part taken off, by the owner’s leave',
    'owners-leave': 'with the owner’s leave',
    laboratory: 'in a laboratory, from a sample taken with the owner’s leave',
  };
  return words[needs];
}

/** What a photograph can show of a sign. */
export function photoWords(inPhoto: Sign['inPhoto']): string {
  const words: Record<Sign['inPhoto'], string> = {
    clear: 'can be seen clearly',
    hint: 'shows as a hint at best',
    no: 'can’t be seen',
  };
  return words[inPhoto];
}

/** What a part is once an alteration has changed it. */
export function originWords(origin: 'repair' | 'improve' | 'other-old'): string {
  const words = { repair: 'a repair', improve: 'an improvement', 'other-old': 'from another old piece' };
  return words[origin];
}
