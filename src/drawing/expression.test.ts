import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate } from './expression.ts';

/** A sum as a tree, with what it comes to worked out apart from its text. */
type Sum = { text: string; value: number };

const values = { seatDepth: 430, seatWidthFront: 540, leg: 45, none: 0 };

const { sum } = fc.letrec<{ sum: Sum }>((tie) => ({
  sum: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.integer({ min: 0, max: 999 }).map((n) => ({ text: `${n}`, value: n })),
    fc.integer({ min: 0, max: 9999 }).map((n) => ({
      text: `${Math.floor(n / 10)}.${n % 10}`,
      value: Number(`${Math.floor(n / 10)}.${n % 10}`),
    })),
    fc.constantFrom(...Object.entries(values)).map(([text, value]) => ({ text, value })),
    fc.tuple(tie('sum'), fc.constantFrom('+', '-', '*', '/'), tie('sum')).map(([a, sign, b]) => ({
      text: `(${a.text}) ${sign} (${b.text})`,
      value:
        sign === '+'
          ? a.value + b.value
          : sign === '-'
            ? a.value - b.value
            : sign === '*'
              ? a.value * b.value
              : a.value / b.value,
    })),
    tie('sum').map((a) => ({ text: `-(${a.text})`, value: -a.value })),
    fc
      .tuple(fc.constantFrom('min', 'max'), fc.array(tie('sum'), { minLength: 1, maxLength: 3 }))
      .map(([which, all]) => ({
        text: `${which}(${all.map((each) => each.text).join(', ')})`,
        value: Math[which as 'min' | 'max'](...all.map((each) => each.value)),
      })),
  ),
}));

describe('evaluate', () => {
  it('comes to what the sum comes to, or says that it is no number', () => {
    fc.assert(
      fc.property(sum, ({ text, value }) => {
        const result = evaluate(text, values);
        expect(result.ok).toBe(Number.isFinite(value));
        if (result.ok) expect(result.value).toBe(value);
      }),
      { seed: 1745, numRuns: 500 },
    );
  });

  it('takes products before sums, and goes from left to right', () => {
    fc.assert(
      fc.property(
        fc.tuple(...Array.from({ length: 4 }, () => fc.integer({ min: 1, max: 99 }))),
        ([a, b, c, d]) => {
          const result = evaluate(`${a}-${b}*${c}/${d}-${a}+${b}`, {});
          expect(result).toEqual({
            ok: true,
            value:
              (a as number) - ((b as number) * (c as number)) / (d as number) - (a as number) + (b as number),
          });
        },
      ),
      { seed: 1745, numRuns: 200 },
    );
  });

  it('answers any text without throwing', () => {
    const signs = fc.constantFrom('+', '-', '*', '/', '(', ')', ',', ' ', '.', '1', 'leg', 'min', '{', 'é');
    fc.assert(
      fc.property(fc.array(signs, { maxLength: 30 }), (words) => {
        const result = evaluate(words.join(''), values);
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
        else expect(result.message).toMatch(/\.$/);
      }),
      { seed: 1745, numRuns: 1000 },
    );
  });

  it.each([
    ['leg+', /missing at the end/],
    ['seatDepht/2', /"seatDepht"/],
    ['constructor', /"constructor"/],
    ['leg/none', /divides by nothing/],
    ['(leg', /not closed/],
    ['leg leg', /can't stand here/],
    ['sqrt(leg)', /min.*max/],
    ['leg;1', /";"/],
    ['', /missing/],
    [`${'('.repeat(99)}1`, /parentheses/],
    [`${'-'.repeat(99)}1`, /minuses/],
  ])('refuses %j in words', (text, words) => {
    expect(evaluate(text, values)).toEqual({ ok: false, message: expect.stringMatching(words) });
  });
});
