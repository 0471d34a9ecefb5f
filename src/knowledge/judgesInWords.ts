import { dayWords } from '../units/days.ts';
import type { Knowledge } from './schema.ts';

/** Who judged where several were asked apart, in sentences; empty where nobody else was asked. */
export function judgesInWords({ pooling }: Pick<Knowledge['making'], 'pooling'>): string {
  if (pooling === undefined) return '';
  const judges = Object.values(pooling.judges).map(
    ({ who }) => `${who.slice(0, 1).toLowerCase()}${who.slice(1, -1)}`,
  );
  return `Where several judged apart, the best figure is the middle of that of the knowledge files and of what others said who were asked on ${dayWords(pooling.asked)} without seeing them: ${judges.join('; ')}. The wider they lie apart, the wider the range.`;
}
