/** Where a part can have come from. */
export const origins = ['of-the-making', 'repair', 'improve', 'other-old'] as const;
export type Origin = (typeof origins)[number];

/** An origin in the middle of a sentence. */
export const originWords: Readonly<Record<Origin, string>> = {
  'of-the-making': 'original',
  repair: 'a later repair or renewal',
  improve: 'put in later, to improve',
  'other-old': 'from another old piece',
};
