import { type Check, faultIn } from './check.ts';

/** A reason is a whole sentence: the report prints it as it stands. */
export const sentencesStop: Check = {
  id: 'sentences-stop',
  protects: 'What is printed in a report reads as whole sentences.',
  find: ({ entries }) =>
    entries.flatMap((entry) =>
      sentencesIn(entry.value, []).flatMap(({ path, text }) => {
        if (/[.?!]$/.test(text.trim()) && /^["'“‘(\d]?[A-Z0-9]/.test(text.trim())) return [];
        return [
          faultIn('sentences-stop', entry, path, {
            what: `"${text.slice(0, 60)}" is not a whole sentence.`,
            mend: 'Begin it with a capital and end it with a stop.',
            example: 'why: "Usual in factory joints after 1920."',
          }),
        ];
      }),
    ),
};

/** Fields printed as sentences. */
const sentenceFields = new Set([
  'look',
  'caution',
  'cautions',
  'what',
  'why',
  'note',
  'how',
  'honestContrast',
  'tellOwner',
  'desirability',
]);

function sentencesIn(value: unknown, path: readonly PropertyKey[]): { path: PropertyKey[]; text: string }[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]) => {
    const at = [...path, key];
    if (!sentenceFields.has(key)) return sentencesIn(each, at);
    if (typeof each === 'string') return [{ path: at, text: each }];
    if (Array.isArray(each)) return each.map((text, index) => ({ path: [...at, index], text: String(text) }));
    return sentencesIn(each, at);
  });
}
