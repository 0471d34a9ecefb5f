import Fraction from 'fraction.js';

/** A sum of money or points, kept as a whole-number fraction: nothing is rounded before it is told. */
export type Exact = Fraction;

/** A number as it is written in figures: 0.1 is one tenth, not the binary number nearest to it. */
export function exact(value: number): Exact {
  if (!Number.isFinite(value)) throw new RangeError(`exact needs a finite number, got ${value}`);
  return new Fraction(plainDigits(value));
}

/** Nothing. */
export const nothing: Exact = new Fraction(0);

/** The sum, exactly. */
export function total(values: Iterable<Exact>): Exact {
  let all = nothing;
  for (const value of values) all = all.add(value);
  return all;
}

/**
 * Sums to the cent that add up to the same as before: each is rounded down, and the cents left over go to those that lost most by it,
 * the first listed first.
 *
 * @param values  whose sum is a whole number of cents
 * @throws RangeError where the sum is none
 * @source largest remainders, common practice
 */
export function toTheCent(values: readonly Exact[]): number[] {
  const inCents = values.map((value) => value.mul(100));
  const floors = inCents.map((value) => value.floor());
  const left = total(inCents).sub(total(floors));
  if (left.d !== 1n) throw new RangeError('toTheCent needs values that add up to whole cents');
  const first = inCents
    .map((value, index) => ({ index, lost: value.sub(floors[index] as Exact) }))
    .toSorted((a, b) => b.lost.compare(a.lost) || a.index - b.index)
    .slice(0, Number(left.valueOf()));
  const raised = new Set(first.map(({ index }) => index));
  return floors.map((floor, index) =>
    floor
      .add(raised.has(index) ? 1 : 0)
      .div(100)
      .valueOf(),
  );
}

/** The shortest digits of a number without an exponent. */
function plainDigits(value: number): string {
  const text = String(value);
  const [digits = '', power] = text.split('e');
  if (power === undefined) return text;
  const sign = digits.startsWith('-') ? '-' : '';
  const [whole = '', rest = ''] = digits.replace('-', '').split('.');
  const shift = Number(power);
  return shift >= 0
    ? `${sign}${whole}${rest.padEnd(shift, '0')}`
    : `${sign}0.${'0'.repeat(-shift - 1)}${whole}${rest}`;
}
