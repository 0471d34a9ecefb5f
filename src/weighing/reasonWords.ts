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
 * @param named  names what speaks
 */
export function reasonInWords(reason: Reason, leading: ReadingId, named: Named): string {
  const many = reason.cause !== undefined;
  const who = whoSpeaks(reason, named);
  if (reason.withinWhole === null) return `${who} ${many ? 'have' : 'has'} no number: ${limitWords(reason)}`;
  const speaks = speaksFor(reason.withinWhole, ...sidesOf(leading), many);
  return many ? `${who} ${speaks}` : `${who} ${speaks}, with all else taken in`;
}

/** Names a finding, `“Pegged tenons” on the left side rail`, and what is the examiner’s own, marked as such, by its id. */
export type Named = {
  finding: (finding: Weighing['weights'][number]) => string;
  own: (id: string) => string;
};

function whoSpeaks({ cause, findings, own }: Reason, named: Named): string {
  if (own !== undefined) return named.own(own);
  if (cause !== undefined) return `${cause.name}: ${inWords(findings.length)} findings together`;
  return findings.map(named.finding).join(', ');
}

function limitWords({ limit }: Reason): string {
  return inSentence((limit?.words ?? 'a limit leaves one side nothing').replace(/\.$/, ''));
}

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

function inWords(count: number): string {
  return counts[count] ?? `${count}`;
}
