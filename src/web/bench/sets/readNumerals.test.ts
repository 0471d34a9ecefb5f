import { describe, expect, it } from 'vitest';
import { readNumerals, readRoman } from './readNumerals.ts';

describe('numbers on seat frames', () => {
  it('reads strokes as chisels cut them, fours and nines either way', () => {
    const cut = {
      I: 1,
      III: 3,
      IIII: 4,
      IV: 4,
      V: 5,
      VIII: 8,
      VIIII: 9,
      IX: 9,
      XII: 12,
      XXIV: 24,
      IIIIII: 6,
    };
    for (const [text, value] of Object.entries(cut)) expect(readRoman(text), text).toBe(value);
  });

  it('refuses what is no numeral', () => {
    for (const text of ['', 'IIV', 'VV', 'IC', 'chair', 'XIIIII', 'W'])
      expect(readRoman(text), text).toBe(undefined);
  });

  it('reads a line as it is jotted down, Roman and plain, and names what it can’t read', () => {
    const { numbers, unread } = readNumerals('No. III, v; 11 and #12, seat, 0, Ⅷ.');
    expect(numbers.map(({ value }) => value)).toEqual([3, 5, 11, 12, 8]);
    expect(unread).toEqual(['seat', '0']);
  });

  it('says what a numeral is from its other side, where that is another number', () => {
    const { numbers } = readNumerals('IV VI XI III X 16');
    expect(numbers.map(({ turned }) => turned)).toEqual([6, 4, 9, undefined, undefined, undefined]);
  });
});
