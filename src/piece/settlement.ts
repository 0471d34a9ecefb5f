import { z } from 'zod';
import { day } from './engagement.ts';
import { makingKind, type ReadingId, readingIds, readingsOfMaking } from './readings.ts';

/** What a verdict can rest on: papers of the time, a laboratory, or another expert who did not know ours. */
export const settledByIds = ['document', 'laboratory', 'second-expert'] as const;
export const settledBy = z.enum(settledByIds);
export type SettledBy = z.infer<typeof settledBy>;

/** How each is written out, and how it stands in the middle of a sentence. */
export const settledByWords: Record<SettledBy, { title: string; inSentence: string }> = {
  document: { title: 'A document of the time', inSentence: 'a document of the time' },
  laboratory: { title: 'A laboratory', inSentence: 'a laboratory' },
  'second-expert': { title: 'A second expert', inSentence: 'a second expert' },
};

/** What is asked of a piece of the period. */
export const conditionIds = ['period-intact', 'period-repaired', 'period-altered'] as const;

/**
 * What a piece turned out to be, on grounds other than the examiner's own reading. Making and condition may each be left open;
 * `rests` names the findings that the verdict itself rests on, by their keys: they can't bear themselves out.
 */
export const settlement = z.strictObject({
  making: makingKind.optional(),
  condition: z.enum(conditionIds).optional(),
  by: settledBy,
  rests: z.array(z.string()).default([]),
  on: day,
  words: z.string().default(''),
});
export type Settlement = z.infer<typeof settlement>;

/** The readings that a verdict leaves: all of them where it leaves both questions open. */
export function readingsLeft({
  making,
  condition,
}: Pick<Settlement, 'making' | 'condition'>): readonly ReadingId[] {
  if (condition !== undefined && (making ?? 'of-the-period') === 'of-the-period') return [condition];
  return making === undefined ? readingIds : readingsOfMaking[making];
}
