import { z } from 'zod';
import type { ReadingId } from './readings.ts';

/** Words for how far something would be expected of a kind of piece; the figures stand in knowledge/making.yaml. */
export const expectedWords = ['hardly ever', 'seldom', 'sometimes', 'often', 'nearly always'] as const;
const expectedWord = z.enum(expectedWords);
export type ExpectedWord = z.infer<typeof expectedWord>;

/** The kinds of piece an observation is held against. */
export const pieceHistories = ['original', 'repaired', 'altered', 'married', 'copied', 'faked'] as const;
export type PieceHistory = (typeof pieceHistories)[number];

/** The readings that a kind of piece takes in. */
export const readingsOfHistory: Record<PieceHistory, readonly ReadingId[]> = {
  original: ['period-intact'],
  repaired: ['period-repaired'],
  altered: ['period-altered'],
  married: ['made-up'],
  copied: ['later-bench-copy', 'later-machine-copy'],
  faked: ['made-to-deceive'],
};

/**
 * What the examiner saw that no sign of the knowledge covers: in words, with how far it would be expected of such a piece,
 * were it original, repaired, altered, married, copied or faked. It is the examiner's own and marked as such wherever it is told.
 */
export const observation = z.strictObject({
  id: z.string().min(1),
  words: z.string().trim().min(1),
  part: z.string().min(1).optional(),
  expected: z.strictObject({
    original: expectedWord,
    repaired: expectedWord,
    altered: expectedWord,
    married: expectedWord,
    copied: expectedWord,
    faked: expectedWord,
  }),
  photos: z.array(z.string()).default([]),
});
export type Observation = z.infer<typeof observation>;
