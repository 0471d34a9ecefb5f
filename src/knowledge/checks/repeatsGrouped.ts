import { type SoundEntry, soundEntries } from '../entry.ts';
import { type Check, faultIn } from './check.ts';

/** Signs of one cause that nearly repeat each other on the same kind of part stand in one group. */
export const repeatsGrouped: Check = {
  id: 'repeats-grouped',
  protects: 'One observation in two wordings is not counted twice.',
  find: ({ entries }) => {
    const signs = soundEntries(entries, 'sign');
    return signs.flatMap((later, index) =>
      signs
        .slice(0, index)
        .filter((earlier) => nearlyRepeats(earlier, later))
        .map((earlier) =>
          faultIn('repeats-grouped', later, ['name'], {
            what: `"${later.value.name}" nearly repeats "${earlier.value.name}" (${earlier.id} in ${earlier.file}) and is not in one group with it.`,
            mend: 'Give both the same group, or word them so that their difference shows.',
            example: `group: ${earlier.value.group ?? earlier.id}`,
          }),
        ),
    );
  },
};

function nearlyRepeats(a: SoundEntry<'sign'>, b: SoundEntry<'sign'>): boolean {
  if (a.value.hangsOn !== b.value.hangsOn) return false;
  if (a.value.group !== undefined && a.value.group === b.value.group) return false;
  if (!a.value.on.some((kind) => b.value.on.includes(kind))) return false;
  return overlap(a.value.name, b.value.name) >= 0.6 || overlap(a.value.look, b.value.look) >= 0.6;
}

/** Words that both have, of all that either has; small words left out. */
function overlap(a: string, b: string): number {
  const [first, second] = [wordsOf(a), wordsOf(b)];
  const shared = [...first].filter((word) => second.has(word)).length;
  return shared === 0 ? 0 : shared / (first.size + second.size - shared);
}

function wordsOf(text: string): Set<string> {
  const words = text.toLowerCase().match(/[a-z]{3,}/g) ?? [];
  return new Set(words.filter((word) => !smallWords.has(word)).map((word) => word.replace(/(es|s)$/, '')));
}

const smallWords = new Set([
  'the',
  'and',
  'with',
  'for',
  'from',
  'not',
  'its',
  'are',
  'that',
  'this',
  'into',
  'look',
]);
