import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contradictionBelowWords } from './contradictionBelow.ts';
import {
  outOf,
  outOfRange,
  probabilityBand,
  probabilityScaleWords,
  probableWords,
  probablyThat,
} from './probabilityWords.ts';

describe('saying how probable', () => {
  it('never says more than 999 or less than 1 in 1000 (property)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (probability) => {
        const [count, of] = outOf(probability).split(' in ').map(Number) as [number, number];
        expect(count / of).toBeGreaterThanOrEqual(0.001);
        expect(count / of).toBeLessThanOrEqual(0.999);
        expect(Math.abs(count / of - Math.min(0.999, Math.max(0.001, probability)))).toBeLessThanOrEqual(
          0.0051,
        );
      }),
      { seed: 2 },
    );
  });

  it('says more for more', () => {
    expect([0, 0.2, 0.4, 0.5, 0.6, 0.75, 0.999].map((p) => probabilityBand(p).words)).toEqual([
      'very improbable',
      'possible',
      'less probable than not',
      'about an even chance',
      'more probable than not',
      'probable',
      'almost certain',
    ]);
    expect(() => probabilityBand(-0.1)).toThrow('a probability lies between 0 and 1, got -0.1');
    expect(probabilityScaleWords()).toBe(
      'almost certain, from 99 in 100; very probable, from 90 in 100; probable, from 70 in 100; more probable than not, from 55 in 100; about an even chance, from 45 in 100; less probable than not, from 30 in 100; possible, from 10 in 100; improbable, from 1 in 100; very improbable, below 1 in 100',
    );
    expect(probableWords(0.93)).toBe('very probable (93 in 100)');
    expect(probablyThat(0.93, 'original')).toBe('Very probably original (93 in 100)');
    expect(contradictionBelowWords()).toBe('improbable (below 10 in 100)');
    expect([0.004, 0.01, 0.994, 0.995].map(outOf)).toEqual([
      '4 in 1000',
      '1 in 100',
      '99 in 100',
      '995 in 1000',
    ]);
    expect(outOfRange(0.9, 0.9995)).toBe('from 90 in 100 to 999 in 1000');
  });
});
