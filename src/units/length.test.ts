import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatBoth, formatInches, formatMm, parseLength } from './length.ts';

const seed = 1959;

function mmOf(text: string): number {
  const parsed = parseLength(text);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.mm;
}

describe('values of a standard table', () => {
  // NIST SP 811 (2008), appendix B.8: inch to centimetre 2.54 E+00, foot to metre 3.048 E-01, both exact
  // (bold in the table). The parts of an inch follow from the definition by whole-number division.
  test.each([
    ['1 in', 25.4],
    ['1 ft', 304.8],
    ['1/2', 12.7],
    ['1/4', 6.35],
    ['1/8', 3.175],
    ['1/16', 1.5875],
    ['1/32', 0.79375],
    ['1/64', 0.396875],
    ['39 in', 990.6],
    ['1 cm', 10],
    ['1 m', 1000],
  ])('%s is %d mm', (text, mm) => {
    expect(mmOf(text)).toBe(mm);
  });
});

describe('ways of writing one length', () => {
  const same = [
    '37 1/8', '37⅛', '37⅛"', '37 ⅛ in', '37-1/8', '37 - 1/8"', '37 and 1/8', '3 ft 1 1/8 in', "3' 1 1/8\"", "3'1 1/8\"",
    '3’ 1⅛”', '3′ 1⅛″', "3'-1 1/8\"", '3 feet 1 1/8 inches', '3 ft. 1 1/8 in.', '37.125 in', '37.125', '37 1⁄8', "37 1/8''",
    '３７　１／８', '  37 1/8  ', '37\u202f1/8', '37 2/16', '942.975 mm', '942.975mm', '94.2975 cm', '94,2975 cm', '0.942975 m',
    '37 1/8 IN', '942.975 millimetres', '３７⅛＂', '37\u200b 1/8', '37–1/8', '3 ft, 1 1/8 in', '37 1/8inches',
  ]; // biome-ignore format: a list
  test.each(same)('%s', (text) => {
    expect(mmOf(text)).toBeCloseTo(942.975, 10);
  });

  test.each([
    ['943 mm', 943],
    ['94.3 cm', 943],
    ['94,3 cm', 943],
    ['943,5 mm', 943.5],
    ['.5', 12.7],
    ['5/4', 31.75],
    ["3'", 914.4],
    ['3 ft 0 in', 914.4],
    ['2 1/3 in', 59.266666666666666],
    ['1200 mm', 1200],
    ['㎜'.replace('㎜', '12 ㎜'), 12],
  ])('%s is %d mm', (text, mm) => {
    expect(mmOf(text)).toBeCloseTo(mm, 10);
  });

  test('what was typed is kept', () => {
    expect(parseLength(' 37⅛" ')).toEqual({ ok: true, mm: 942.975, asEntered: '37⅛"' });
  });
});

describe('what can’t be read, or could be read in two ways, is refused with one sentence', () => {
  test.each([
    '',
    ' ',
    'tall',
    '37 1/0',
    '37 1/1',
    '37 9/8',
    '371/8',
    '11/8',
    '37 1/8 1/8',
    '37 1/8 lb',
    '-37',
    '−37 mm',
    '0',
    '0 mm',
    '1,200 mm',
    '37,5',
    '37,5 in',
    '1e3',
    'NaN',
    'Infinity',
    '37..5',
    '3 ft 14 in',
    '37 1/8 mm',
    "3' 4'",
    '9999999 in',
    'in',
    '"',
    "'",
    '12 1/128',
    '37 / 1 / 8',
    '3 ft 1 1/8 mm',
    '1.2.3 mm',
    '37 1.5/8',
    '$37',
    '37 1/8 in 3',
    '٣٧',
  ])('%s', (text) => {
    const parsed = parseLength(text);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.message).toMatch(/^\S[^\n]*\.$/);
    expect(parsed.message).toMatch(/write|check/i);
  });

  test('a length in two readings says both', () => {
    expect(parseLength('1,200 mm')).toMatchObject({
      message: '1,200 mm can be read in two ways: write 1200 mm or 1.200 mm.',
    });
  });
});

describe('printing', () => {
  test.each([
    [942.975, '37 1/8'],
    [943, '37 1/8'],
    [25.4, '1'],
    [12.7, '1/2'],
    [0.3, '0'],
    [-3.175, '−1/8'],
    [-0.3, '0'],
    [304.8, '12'],
  ])('%d mm is %s in', (mm, words) => {
    expect(formatInches(mm)).toBe(words);
  });

  test('coarser, finer, with one-sign fractions', () => {
    expect(formatInches(942.975 + 1.5875, { denominator: 8 })).toBe('37 1/4');
    expect(formatInches(942.975 + 0.79375, { denominator: 32 })).toBe('37 5/32');
    expect(formatInches(942.975, { vulgar: true })).toBe('37⅛');
    expect(formatInches(12.7, { vulgar: true })).toBe('½');
    expect(formatInches(1.5875, { vulgar: true })).toBe('1/16');
  });

  test('millimetres and both', () => {
    expect(formatMm(942.975)).toBe('943 mm');
    expect(formatMm(3.175)).toBe('3.2 mm');
    expect(formatMm(10)).toBe('10 mm');
    expect(formatMm(-0.01)).toBe('0 mm');
    expect(formatMm(943, 1)).toBe('943.0 mm');
    expect(formatBoth(942.975)).toBe('37 1/8 in (943 mm)');
  });

  test('a number that is none is a programmer’s slip', () => {
    expect(() => formatInches(Number.NaN)).toThrow(RangeError);
    expect(() => formatMm(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});

describe('there and back', () => {
  const denominators = [2, 4, 8, 16, 32, 64] as const;

  test('every sixteenth up to ten feet prints and reads as itself', () => {
    for (let sixteenths = 1; sixteenths <= 1920; sixteenths++) {
      const mm = (sixteenths * 25.4) / 16;
      expect(mmOf(formatInches(mm))).toBeCloseTo(mm, 9);
      expect(mmOf(`${formatInches(mm, { vulgar: true })}"`)).toBeCloseTo(mm, 9);
    }
  });

  test('printed inches are never further off than half the finest part', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 5000, noNaN: true }),
        fc.constantFrom(...denominators),
        (mm, denominator) => {
          const back = mmOf(formatInches(mm, { denominator }));
          expect(Math.abs(back - mm)).toBeLessThanOrEqual(12.7 / denominator + 1e-9);
          expect(formatInches(back, { denominator })).toBe(formatInches(mm, { denominator }));
        },
      ),
      { seed },
    );
  });

  test('feet and inches, spaces and signs make no difference', () => {
    const spaces = fc.constantFrom(' ', '  ', '\u00a0', '\u2009', '\u3000');
    fc.assert(
      fc.property(
        fc.nat(20),
        fc.nat(11),
        fc.integer({ min: 1, max: 15 }),
        spaces,
        (feet, inches, over, space) => {
          const whole = mmOf(`${feet * 12 + inches} ${over}/16`);
          expect(mmOf(`${feet}${space}ft${space}${inches}${space}${over}/16${space}in`)).toBeCloseTo(
            whole,
            9,
          );
          expect(mmOf(`${feet}'${space}${inches}${space}${over}/16"`)).toBeCloseTo(whole, 9);
        },
      ),
      { seed },
    );
  });

  test('millimetres with decimals come back, with a point or a comma', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50_000 }), (tenths) => {
        const printed = formatMm(tenths / 10, 1);
        expect(mmOf(printed)).toBeCloseTo(tenths / 10, 9);
        expect(mmOf(printed.replace('.', ','))).toBeCloseTo(tenths / 10, 9);
      }),
      { seed },
    );
  });

  test('any text gets an answer, never an exception, never a length that is no number', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789 ./-\'"⅛½,infmtce⁄') }), (text) => {
        const parsed = parseLength(text);
        if (parsed.ok) expect(parsed.mm > 0 && Number.isFinite(parsed.mm)).toBe(true);
        else expect(parsed.message.length).toBeGreaterThan(10);
      }),
      { seed, numRuns: 3000 },
    );
  });
});
