import type { Weighing } from '../../weighing/weighing.ts';

type Weight = Weighing['weights'][number];

/** A finding named in a sentence: `“Pegged tenons” on the left side rail`, with what was found. */
export function findingWords(sign: string, part: string, state: Weight['state']): string {
  const seen = {
    present: '',
    absent: ', looked for and not there,',
    'could-not-tell': ', could not tell,',
    'does-not-apply': ', does not apply,',
  }[state];
  return `“${sign}” on ${part.startsWith('the ') ? part : `the ${part}`}${seen}`;
}

/** A weight in whole decibans with its sign: a finer one cannot be felt (Good, from memory). */
export function sayDecibans(decibans: number | null): string {
  if (decibans === null) return 'no number';
  const whole = Math.round(decibans);
  return whole === 0 ? '0 db' : `${whole > 0 ? '+' : '−'}${Math.abs(whole)} db`;
}
