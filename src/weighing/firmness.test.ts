import { describe, expect, it } from 'vitest';
import { firmness } from './firmness.ts';

const sound = {
  looks: 9,
  photoOnly: false,
  clashes: false,
  draws: 500,
  shareLeading: 0.95,
  probability: 0.95,
  low: 0.8,
};

describe('whether a reading is firm', () => {
  it('is so from 95 of 100 trials on, at 95 in 100, and where even the low end is eight in ten', () => {
    expect(firmness(sound).firm).toBe(true);
    expect(firmness({ ...sound, shareLeading: 0.949 })).toMatchObject({
      firm: false,
      firmness: { shareOfDraws: 0.949, draws: 500, why: expect.stringContaining('does so in 94 of 100') },
    });
    expect(firmness({ ...sound, probability: 0.949 })).toMatchObject({
      firm: false,
      firmness: { why: expect.stringContaining('less probable than 95 in 100') },
    });
    expect(firmness({ ...sound, low: 0.799 })).toMatchObject({
      firm: false,
      firmness: { why: expect.stringContaining('falls below 80 in 100') },
    });
  });

  it('is not so without trials, findings, the piece in the hand, or a reading that explains it', () => {
    expect(firmness({ ...sound, draws: 0 })).toMatchObject({ firm: false, firmness: { shareOfDraws: null } });
    for (const lack of [{ looks: 0 }, { photoOnly: true }, { clashes: true }])
      expect(firmness({ ...sound, ...lack }).firm).toBe(false);
  });

  it.each([
    [
      {},
      'What leads does so in 95 of 100 trials of the ranges, has at least 95 in 100 and stays above 80 in 100.',
    ],
    [{ draws: 0 }, 'The ranges of the figures have not been tested yet, so nothing is called settled.'],
    [{ looks: 0 }, 'Nothing has been looked at yet: only the starting odds speak.'],
    [
      { clashes: true },
      'What leads does so in 95 of 100 trials of the ranges, but none of the readings explains the findings well.',
    ],
    [
      { photoOnly: true },
      'What leads does so in 95 of 100 trials of the ranges, but photographs alone cannot settle a reading.',
    ],
    [
      { shareLeading: 0.6 },
      'What leads does so in 60 of 100 trials of the ranges; it would take 95 to call it settled.',
    ],
  ])('%j: says why', (grounds, why) => {
    expect(firmness({ ...sound, ...grounds }).firmness.why).toBe(why);
  });
});
