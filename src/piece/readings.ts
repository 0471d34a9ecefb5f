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
