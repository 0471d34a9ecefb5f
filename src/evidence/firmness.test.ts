import { describe, expect, it } from 'vitest';
import { firmness } from './firmness.ts';

const sound = { looks: 9, photoOnly: false, clashes: false, draws: 500, shareLeading: 0.95, low: 0.5 };

describe('whether a reading is firm', () => {
  it('is so from 95 of 100 trials on, and where even the low end is one in two', () => {
    expect(firmness(sound).firm).toBe(true);
    expect(firmness({ ...sound, shareLeading: 0.949 })).toMatchObject({
      firm: false,
      firmness: { shareOfDraws: 0.949, draws: 500, why: expect.stringContaining('leads in 94 of 100') },
    });
    expect(firmness({ ...sound, low: 0.499 })).toMatchObject({
      firm: false,
      firmness: { why: expect.stringContaining('not more probable than all the others') },
    });
  });

  it('is not so without trials, findings, the piece in the hand, or a reading that explains it', () => {
    expect(firmness({ ...sound, draws: 0 })).toMatchObject({ firm: false, firmness: { shareOfDraws: null } });
    for (const lack of [{ looks: 0 }, { photoOnly: true }, { clashes: true }])
      expect(firmness({ ...sound, ...lack }).firm).toBe(false);
  });
});
