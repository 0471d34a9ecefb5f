import { counted } from '../../ground/words.ts';
import type { QueuedAct } from './act.ts';

/**
 * What is said of entries that wait for a record which does not answer here.
 *
 * @param titles  of the pieces they were made on, as far as they are known here
 */
export function elsewhereWords(count: number, titles: readonly string[]): string {
  const entries = counted(count, 'entry waits', 'entries wait');
  const of =
    titles.length === 0
      ? 'another data folder'
      : `the record of ${titles.map((title) => `“${title === '' ? 'A piece without a name' : title}”`).join(', ')}`;
  const them = count === 1 ? 'it' : 'them';
  return `${entries} in this browser for ${of}, which is not the one that answers here. Start Underside with that data folder to hand ${them} in, or save ${them} as a file.`;
}

/** Those entries as a file that can be read: each act as the record would have had it, and the record it was made for. */
export function elsewhereFile(acts: readonly QueuedAct[]): string {
  return JSON.stringify(
    { waiting: acts.map(({ record, act }) => ({ record: record ?? null, ...act })) },
    null,
    1,
  );
}
