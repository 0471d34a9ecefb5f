import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outOf, outOfRange, probabilityBand } from '../evidence/probabilityWords.ts';

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
    expect(outOfRange(0.9, 0.9995)).toBe('from 90 in 100 to 999 in 1000');
  });
});
