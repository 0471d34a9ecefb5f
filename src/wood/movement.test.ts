import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coefficientFromShrinkage, shrinkageFromCoefficient } from './coefficient.ts';
import { equilibriumMoisture } from './equilibriumMoisture.ts';
import { changeByCoefficient, changeByShrinkage, changeBySimpleShrinkage, shrinkageAt } from './movement.ts';

const seed = 2010;
const moisture = fc.double({ min: 0, max: 30, noNaN: true });
const width = fc.double({ min: 1, max: 2000, noNaN: true });
const shrinkage = fc.double({ min: 1, max: 13, noNaN: true });

describe('movement by shrinkage', () => {
  test('from green is the loss the Handbook’s table is about', () => {
    fc.assert(
      fc.property(width, shrinkage, moisture, (mm, S, M) => {
        const lost = -changeByShrinkage(mm, S, 30, 30, M);
        expect(lost).toBeCloseTo((mm * shrinkageAt(S, 30, M)) / 100, 8);
      }),
      { seed },
    );
  });

  test('there and back again is nothing, and two steps are one', () => {
    fc.assert(
      fc.property(width, shrinkage, moisture, moisture, moisture, (mm, S, a, b, c) => {
        const first = mm + changeByShrinkage(mm, S, 30, a, b);
        expect(first + changeByShrinkage(first, S, 30, b, a)).toBeCloseTo(mm, 8);
        const twice = first + changeByShrinkage(first, S, 30, b, c);
        expect(twice).toBeCloseTo(mm + changeByShrinkage(mm, S, 30, a, c), 8);
      }),
      { seed },
    );
  });

  test('from 10 % agrees with the coefficient that follows from it, and the simple way is near', () => {
    fc.assert(
      fc.property(width, shrinkage, fc.double({ min: 6, max: 14, noNaN: true }), (mm, S, to) => {
        const change = changeByShrinkage(mm, S, 30, 10, to);
        expect(changeByCoefficient(mm, coefficientFromShrinkage(S, 30), 10, to)).toBeCloseTo(change, 9);
        expect(Math.abs(changeBySimpleShrinkage(mm, S, 30, 10, to) - change)).toBeLessThanOrEqual(
          0.1 * Math.abs(change) + 1e-12,
        );
      }),
      { seed },
    );
  });

  test('the coefficient and the shrinkage lead back to each other', () => {
    fc.assert(
      fc.property(shrinkage, fc.integer({ min: 22, max: 30 }), (S, F) => {
        expect(shrinkageFromCoefficient(coefficientFromShrinkage(S, F), F)).toBeCloseTo(S, 10);
      }),
      { seed },
    );
  });
});

describe('equilibrium moisture', () => {
  test('rises with dampness and falls with warmth', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 59, noNaN: true }),
        fc.double({ min: 1, max: 93, noNaN: true }),
        (warm, damp) => {
          const here = equilibriumMoisture(warm, damp);
          expect(equilibriumMoisture(warm, damp + 1)).toBeGreaterThan(here);
          if (warm > 10) expect(equilibriumMoisture(warm + 1, damp)).toBeLessThan(here);
        },
      ),
      { seed },
    );
  });
});

test('slips of the programmer throw', () => {
  expect(() => equilibriumMoisture(20, 99)).toThrow(RangeError);
  expect(() => equilibriumMoisture(Number.NaN, 50)).toThrow(RangeError);
  for (const change of [changeByShrinkage, changeBySimpleShrinkage])
    expect(() => change(0, 7, 30, 12, 8)).toThrow(RangeError);
  expect(() => changeByCoefficient(-5, 0.002, 12, 8)).toThrow(RangeError);
});
