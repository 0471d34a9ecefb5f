import { inSentence } from '../knowledge/inSentence.ts';
import { type ReadingId, readingWords } from '../piece/readings.ts';
import type { Reason } from './reasons.ts';
import { isSupport, scaleBand } from './verbalScale.ts';
import type { Weighing } from './weighing.ts';

/** `speaks strongly for a later piece`: a weight in words, by the printed scale; `speak` for several findings. */
export function speaksFor(decibans: number, side: string, otherSide: string, many = false): string {
  if (!isSupport(decibans)) return `${many ? 'say' : 'says'} too little either way to count as support`;
  return `${many ? 'speak' : 'speaks'} ${scaleBand(decibans).adverb} for ${decibans > 0 ? side : otherSide}`;
}

/** The two sides every weight is told for: the leading reading and all the others. */
export function sidesOf(leading: ReadingId): [string, string] {
  return [readingWords[leading].inSentence, 'another reading'];
}

/**
 * A reason in a sentence without its stop: `Upper and lower part married: five findings together speak strongly for a piece made
 * up from old parts`; for a single finding what it does with all else taken in.
 *
 * @param named  a finding named: `“Pegged tenons” on the left side rail`
 */
export function reasonInWords(
  reason: Reason,
  leading: ReadingId,
  named: (finding: Weighing['weights'][number]) => string,
): string {
  const { cause, findings } = reason;
  const many = cause !== undefined;
  const who = many
    ? `${cause.name}: ${inWords(findings.length)} findings together`
    : findings.map(named).join(', ');
  if (reason.withinWhole === null) return `${who} ${many ? 'have' : 'has'} no number: ${limitWords(reason)}`;
  const speaks = speaksFor(reason.withinWhole, ...sidesOf(leading), many);
  return many ? `${who} ${speaks}` : `${who} ${speaks}, with all else taken in`;
}

function limitWords({ limit }: Reason): string {
  return inSentence((limit?.words ?? 'a limit leaves one side nothing').replace(/\.$/, ''));
}

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

function inWords(count: number): string {
  return counts[count] ?? `${count}`;
}
