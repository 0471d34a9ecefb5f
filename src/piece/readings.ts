import { z } from 'zod';

/** The histories an examiner would write, in the order they are listed when equally probable. */
export const readingIds = [
  'period-intact',
  'period-repaired',
  'period-altered',
  'made-up',
  'later-bench-copy',
  'later-machine-copy',
  'made-to-deceive',
] as const;
export const readingId = z.enum(readingIds);
export type ReadingId = z.infer<typeof readingId>;

/** How a reading is written out, and how it stands in the middle of a sentence. */
export const readingWords: Record<ReadingId, { title: string; inSentence: string }> = {
  'period-intact': {
    title: 'Of the period, substantially intact',
    inSentence: 'a period piece, substantially intact',
  },
  'period-repaired': {
    title: 'Of the period, with later repairs',
    inSentence: 'a period piece with later repairs',
  },
  'period-altered': {
    title: 'Of the period, altered or improved',
    inSentence: 'a period piece, altered or improved',
  },
  'made-up': {
    title: 'Married, or assembled from old parts',
    inSentence: 'a marriage, or a piece assembled from old parts',
  },
  'later-bench-copy': { title: 'A later copy, made by hand', inSentence: 'a later copy made by hand' },
  'later-machine-copy': {
    title: 'A later copy, made by machine',
    inSentence: 'a later copy made by machine',
  },
  'made-to-deceive': {
    title: 'Made or altered to pass as older',
    inSentence: 'a piece made or altered to pass as older',
  },
};

/** What is asked first: how the piece as it stands came to be. Its condition is asked next, where it is of the period. */
export const makingKinds = ['of-the-period', 'put-together', 'later-copy', 'to-deceive'] as const;
export const makingKind = z.enum(makingKinds);
export type MakingKind = (typeof makingKinds)[number];

/** The readings of each answer. */
export const readingsOfMaking: Record<MakingKind, readonly ReadingId[]> = {
  'of-the-period': ['period-intact', 'period-repaired', 'period-altered'],
  'put-together': ['made-up'],
  'later-copy': ['later-bench-copy', 'later-machine-copy'],
  'to-deceive': ['made-to-deceive'],
};

/** The readings in which the main body is of the period, a marriage of old parts among them. */
export const periodReadings: readonly ReadingId[] = [
  ...readingsOfMaking['of-the-period'],
  ...readingsOfMaking['put-together'],
];

/** How an answer is written out, and how it stands in the middle of a sentence. */
export const makingWords: Record<MakingKind, { title: string; inSentence: string }> = {
  'of-the-period': { title: 'Of the period', inSentence: 'of the period' },
  'put-together': readingWords['made-up'],
  'later-copy': { title: 'A later copy', inSentence: 'a later copy' },
  'to-deceive': readingWords['made-to-deceive'],
};
