import { describe, expect, it } from 'vitest';
import { ratioWords, roundnessWords } from './roundnessWords.ts';

const result = {
  differenceMm: 11,
  sigmaMm: 1.1,
  expectedOld: { meanMm: 13.2, sdMm: 3.4 },
  expectedNew: { meanMm: -1.1, sdMm: 2.5 },
  likelihoodRatio: 14.2,
};

describe('an out-of-round measure in words', () => {
  it('says what was found, what would be expected and how far it tells', () => {
    const said = roundnessWords(result, 'Mahogany, true');
    expect(said).toMatch(/differ by 7\/16.*11\.0 mm/);
    expect(said).toContain('mahogany, true of old make');
    expect(said).toContain('14 times as probable of old work');
  });

  it('does not call a difference within the measuring a difference', () => {
    expect(roundnessWords({ ...result, differenceMm: 1.5 }, 'Oak')).toContain('agree within the measuring');
  });

  it('owns that a ratio near one tells nothing', () => {
    expect(ratioWords(1.1)).toBe('It does not tell old from recent.');
    expect(ratioWords(0.25)).toBe('That is 4.0 times as probable of recent work as of old.');
  });
});
