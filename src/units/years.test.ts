import { describe, expect, test } from 'vitest';
import { formatYears, parseYears } from './years.ts';

describe('years', () => {
  test('print', () => {
    expect(formatYears([1760, 1790])).toBe('1760–1790');
    expect(formatYears([1775, 1775])).toBe('1775');
    expect(() => formatYears([1790, 1760])).toThrow(RangeError);
    expect(() => formatYears([1760.5, 1790])).toThrow(RangeError);
  });

  test.each([
    ['1775', [1775, 1775]],
    ['1760–1790', [1760, 1790]],
    ['1760 to 1790', [1760, 1790]],
    ['1760-90', [1760, 1790]],
    ['1760s', [1760, 1769]],
    ['about 1775', [1765, 1785]],
    ['c. 1775', [1765, 1785]],
    ['ca.1775', [1765, 1785]],
  ])('%s is read', (text, years) => {
    expect(parseYears(text)).toEqual({ ok: true, years, asEntered: text });
  });

  test.each(['', 'old', '176', '17600', '1790–1760', '1790-60', 'about 1760–1790'])(
    '%s is refused in a sentence',
    (text) => {
      const parsed = parseYears(text);
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) expect(parsed.message).toMatch(/write.*\.$/);
    },
  );

  test('what is printed is read back', () => {
    for (let from = 1600; from < 1900; from += 7) {
      expect(parseYears(formatYears([from, from + 30]))).toMatchObject({
        ok: true,
        years: [from, from + 30],
      });
    }
  });
});
