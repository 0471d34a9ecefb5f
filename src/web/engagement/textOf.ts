import type { Engagement } from '../../piece/engagement.ts';

/** The fields that are plain words. */
export type TextOf = Exclude<
  keyof Engagement,
  'purpose' | 'answers' | 'askedOn' | 'examinedOn' | 'effectiveOn'
>;
