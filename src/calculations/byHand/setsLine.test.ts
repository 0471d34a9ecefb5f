import { describe, expect, it, test } from 'vitest';
import reference from '../../../test/reference/regressions.json' with { type: 'json' };
import { runById } from '../runById.ts';
import { outputOf } from '../testing/outputOf.ts';
import { setsLine } from './setsLine.ts';

const context = { yearNow: 2026 } as Parameters<typeof runById>[2];
const near = (found: number, expected: number, relative: number) =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.max(Math.abs(expected), 1e-3));

describe('NIST certified regressions', () => {
  it.each(reference.sets)('$id', ({ expected, relative, id: _, ...asked }) => {
    const found = outputOf(setsLine, asked);
    for (const [i, each] of expected.coefficients.entries())
      near(found.coefficients[i] as number, each, relative);
    for (const [i, each] of expected.coefficient_sd.entries())
      near(found.coefficientSd[i] as number, each, relative);
    near(found.residualSd, expected.residual_sd, relative);
    near(found.rSquared, expected.r_squared, relative);
  });
});

const faultsOf = (asked: unknown) => {
  const result = runById('sets.line', asked, context);
  return result.ok ? [] : result.faults.map((fault) => fault.code);
};

test('what settles no line is refused', () => {
  expect(faultsOf({ y: [1, 2, 3], x: [[5], [5], [5]] })).toEqual(['sets.not-settled']);
  expect(faultsOf({ y: [1, 2, 3], x: [[1], [2]] })).toEqual(['sets.rows']);
  expect(
    faultsOf({
      y: [1, 2],
      x: [
        [1, 2],
        [3, 5],
      ],
    }),
  ).toEqual(['sets.too-few']);
  expect(
    faultsOf({
      y: [1, 2, 3],
      x: [
        [1, 2],
        [2, 1],
        [3, 3],
      ],
      degree: 2,
    }),
  ).toEqual(['sets.powers']);
});
