import { describe, expect, test } from 'vitest';
import reference from '../../../test/reference/datingOrder.json' with { type: 'json' };
import { datingSpanCalculation } from '../dating.ts';
import type { CalculationContext } from '../define.ts';
import { runById } from '../runById.ts';
import { outputOf } from '../testing/outputOf.ts';
import { datingLine } from './datingLine.ts';
import { datingMean } from './datingMean.ts';
import { datingOrder } from './datingOrder.ts';

// Values and their sources: test/reference/datingOrder.json.

const context = { yearNow: 2026, knowledge: { signs: {} } } as CalculationContext;

function faultsOf(id: string, input: unknown) {
  const result = runById(id, input, context);
  if (result.ok) throw new Error('no fault');
  return result.faults;
}

const sorted = (pairs: readonly (readonly string[])[]) => pairs.map((pair) => [...pair].sort().join()).sort();

describe('dating.order', () => {
  test('nine units of a published section', () => {
    const {
      before,
      unordered,
      level,
      redundant,
      reduced,
      origin: _,
      source: __,
      ...wanted
    } = reference.nineUnits;
    const found = outputOf(datingOrder, { before });
    expect(found).toMatchObject(wanted);
    expect(found.redundant).toEqual(redundant);
    expect(found.reduced).toEqual(reduced);
    expect(sorted(found.unordered)).toEqual(sorted(unordered));
    expect(Object.fromEntries(found.steps.map((step) => [step.id, step.level]))).toEqual(level);
  });

  test('carries bounds along a run of repairs', () => {
    const { before, notBefore, notAfter, years } = reference.termini;
    const found = outputOf(datingOrder, { before, notBefore, notAfter });
    expect(Object.fromEntries(found.steps.map((step) => [step.id, step.years]))).toEqual(years);
    expect(found.conflicts).toEqual([]);
  });

  test('names the units of a loop, and bounds that contradict each other', () => {
    const [fault, ...more] = faultsOf('dating.order', { before: reference.loop.before });
    expect(more).toEqual([]);
    expect(fault?.code).toBe('dating.loop');
    for (const unit of reference.loop.units) expect(fault?.message).toContain(`“${unit}”`);
    const { conflicts } = outputOf(datingOrder, {
      before: [['carcase', 'handles']],
      notBefore: { carcase: 1800 },
      notAfter: { handles: 1790 },
    });
    expect(conflicts).toEqual([{ notBefore: 'carcase', from: 1800, notAfter: 'handles', to: 1790 }]);
  });

  test('steps that nothing bounds can be done in every order', () => {
    const notBefore = { a: 1700, b: 1710, c: 1720, d: 1730 };
    expect(outputOf(datingOrder, { notBefore })).toMatchObject({ orders: 24, longestChain: 1 });
  });

  test.each<[object, string, string]>([
    [{}, 'before', 'give at least one pair'],
    [{ before: [['a', 'a']] }, 'before', 'take that pair out'],
    [{ before: [['a', '']] }, 'before[0][1]', 'empty'],
    [{ before: [['a', 'b']], notAfter: { a: 99 } }, 'notAfter.a', 'at least'],
  ])('%o', (input, path, words) => {
    const faults = faultsOf('dating.order', input);
    expect(faults).toHaveLength(1);
    expect(faults[0]?.path).toBe(path);
    expect(faults[0]?.message).toContain(words);
  });
});

describe('dating.span answers shares, edges and overlap', () => {
  test.each(reference.shares.cases)('$id', ({ input, expected, tolerance }) => {
    const found = outputOf(datingSpanCalculation, input, context);
    const near = (value: number | undefined, wanted: number) =>
      expect(Math.abs((value as number) - wanted)).toBeLessThanOrEqual(tolerance);
    for (const [at, [, year]] of ((expected.quantiles ?? []) as [number, number][]).entries())
      near(found.quantiles?.[at]?.[1], year);
    for (const [at, share] of (expected.bins ?? []).entries()) near(found.bins?.[at]?.share, share);
    if (expected.overlap !== undefined) near((found.overlap as number) / expected.overlap, 1);
  });
});

describe('dating.mean and dating.line', () => {
  test.each(reference.means)('$id', ({ kinds, count, yearSum, meanYear, tolerance }) => {
    const found = outputOf(datingMean, { kinds });
    expect(found).toMatchObject({ count, yearSum });
    expect(Math.abs(found.meanYear - meanYear)).toBeLessThanOrEqual(tolerance);
  });

  test('a published line, which says nothing outside its years', () => {
    const { intercept, slope, values, years } = reference.line;
    const line = { intercept, slope, holds: [1620, 1780] };
    const found = outputOf(datingLine, { ...line, values });
    found.years.forEach(({ year }, at) => {
      expect(year).toBeCloseTo(years[at] as number, 9);
    });
    expect(outputOf(datingLine, { ...line, values: [1] })).toMatchObject({
      years: [{ holds: false }],
    });
  });

  test.each<[string, object, string]>([
    ['dating.mean', { kinds: [{ name: 'nails', middleYear: 1800, count: 0 }] }, 'kinds'],
    ['dating.line', { intercept: 1, slope: 1, values: [1], holds: [1800, 1700] }, 'holds'],
    [
      'dating.span',
      { signs: [{ phasedOut: { commonUntil: 1800, latest: 1810 } }], edges: [1800, 1790] },
      'edges',
    ],
  ])('%s %o', (id, input, path) => {
    expect(faultsOf(id, input).map((fault) => fault.path)).toEqual([path]);
  });
});
