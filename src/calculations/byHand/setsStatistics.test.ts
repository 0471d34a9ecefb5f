import { describe, expect, test } from 'vitest';
import reference from '../../../test/reference/describedValues.json' with { type: 'json' };
import sizes from '../../../test/reference/setSizes.json' with { type: 'json' };
import statistics from '../../../test/reference/statistics.json' with { type: 'json' };
import { huberEstimates } from '../../sets/describeValues.ts';
import type { CalculationContext } from '../define.ts';
import { runById } from '../runById.ts';
import { setsSize } from '../sets.ts';
import { outputOf } from '../testing/outputOf.ts';
import { setsGroups } from './setsGroups.ts';
import { setsStatistics } from './setsStatistics.ts';

// Values and their sources: test/reference/describedValues.json, statistics.json and setSizes.json.

const context = { yearNow: 2026 } as CalculationContext;

describe('sets.statistics', () => {
  test.each(reference.certified.sets)('$id', ({ relative, ...set }) => {
    const { first, thenRepeat, times } = set;
    const values = set.values ?? [first, ...Array.from({ length: times ?? 0 }, () => thenRepeat).flat()];
    const found = outputOf(setsStatistics, { values });
    for (const name of ['mean', 'sd', 'lag1'] as const)
      expect(Math.abs((found[name] as number) / set[name] - 1), name).toBeLessThanOrEqual(relative);
  });

  test.each(reference.robust.sets)('$id', ({ values, tolerance, id: _, quartiles, robust, ...wanted }) => {
    const found = outputOf(setsStatistics, { values });
    const near = (value: number, other: number, what: string) =>
      expect(Math.abs(value - other), what).toBeLessThanOrEqual(tolerance);
    for (const [name, value] of Object.entries(wanted)) near(found[name as 'mean'], value, name);
    near(found.quartiles[0], quartiles[0] as number, 'lower quartile');
    near(found.quartiles[1], quartiles[1] as number, 'upper quartile');
    near(found.robust.mean, robust.mean, 'robust mean');
    near(found.robust.sd, robust.sd, 'robust sd');
  });

  test('Grubbs’ and Dixon’s tests', () => {
    const { x, G, criticalOneSided, criticalTwoSided, suspect, tolerance } = statistics.grubbs;
    const { grubbs } = outputOf(setsStatistics, { values: x });
    expect(grubbs).toMatchObject({ value: suspect, standsOut: true });
    for (const [name, wanted] of Object.entries({ G, criticalOneSided, critical: criticalTwoSided }))
      expect(Math.abs((grubbs?.[name as 'G'] as number) - wanted), name).toBeLessThanOrEqual(tolerance);
    const { values, low, high, value, at90, at95 } = reference.dixon;
    const { dixon } = outputOf(setsStatistics, { values });
    expect(dixon).toMatchObject({ value, at90, at95 });
    expect(dixon?.low).toBeCloseTo(low, 9);
    expect(dixon?.high).toBeCloseTo(high, 9);
  });

  test('values that are all alike have no correlation and nothing that stands out', () => {
    expect(outputOf(setsStatistics, { values: [5, 5, 5] })).toMatchObject({
      sd: 0,
      lag1: null,
      robust: { mean: 5, sd: 0 },
      grubbs: null,
      dixon: null,
    });
  });
});

describe('sets.groups', () => {
  const { names, distances } = reference.linkages;

  test.each(['single', 'complete', 'average'] as const)('%s linkage of six cities', (linkage) => {
    const { merges } = outputOf(setsGroups, {
      names,
      distances,
      linkage,
    });
    const wanted = reference.linkages[linkage];
    expect(merges.map(({ members }) => members)).toEqual(wanted.map(({ members }) => members));
    merges.forEach(({ height }, at) => {
      expect(height).toBeCloseTo(wanted[at]?.height as number, 9);
    });
  });

  test.each<[object, string]>([
    [
      {
        names: ['a', 'a'],
        distances: [
          [0, 1],
          [1, 0],
        ],
      },
      'names',
    ],
    [
      {
        names: ['a', 'b'],
        distances: [
          [0, 1],
          [2, 0],
        ],
      },
      'distances[0][1]',
    ],
    [{ names: ['a', 'b'], distances: [[0, 1], [1]] }, 'distances[1]'],
    [
      {
        names: ['a', 'b'],
        distances: [
          [3, 1],
          [1, 0],
        ],
      },
      'distances[0][0]',
    ],
  ])('%o', (input, path) => {
    const result = runById('sets.groups', input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults.map((fault) => fault.path)).toEqual([path]);
  });
});

describe('sets.size answers shares', () => {
  test.each(sizes.shares.cases)('$id', ({ input, quantiles, sd }) => {
    const shares = quantiles.map(([share]) => share);
    const found = outputOf(setsSize, { ...input, shares });
    expect(found.quantiles).toEqual(quantiles);
    if (sd !== undefined) expect(found.sd).toBeCloseTo(sd, 9);
  });

  test('and where a run of unknown start begins and ends', () => {
    const { numbersSeen, run } = sizes.shares.unknownStart;
    const found = outputOf(setsSize, { numbersSeen, first: 'unknown' });
    expect(found.run?.[0]).toBeCloseTo(run[0] as number, 9);
    expect(found.run?.[1]).toBeCloseTo(run[1] as number, 9);
  });
});

test('Huber’s estimates on the copper determinations of the Analytical Methods Committee, as the package MASS gives them', () => {
  const values = [
    2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77, 3.4, 2.2,
    3.5, 3.6, 3.7, 3.7,
  ];
  const { mean, proposal2 } = huberEstimates(values);
  expect(mean).toBeCloseTo(3.2067241296435, 6);
  expect(proposal2.mean).toBeCloseTo(3.2054978034463, 5);
  expect(proposal2.sd).toBeCloseTo(0.6736520403427, 5);
});
