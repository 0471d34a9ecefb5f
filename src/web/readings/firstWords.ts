import { readingWords } from '../../piece/readings.ts';
import type { FirstAnswer } from '../../weighing/firstAnswer.ts';
import { outOf } from '../../weighing/probabilityWords.ts';

/** What is known before the weights are: the reading that leads, and by how much. */
export function firstWords({ leading, readings }: Pick<FirstAnswer, 'leading' | 'readings'>): string {
  const share = readings.find(({ id }) => id === leading)?.probability ?? 0;
  return `The leading reading is ${readingWords[leading].inSentence}, ${outOf(share)}; what each finding weighs is still to come.`;
}
