import { describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import reference from '../../test/reference/valuation.json' with { type: 'json' };
import { setsLine } from './byHand/setsLine.ts';
import { worthAbsorption } from './byHand/worthAbsorption.ts';
import { worthRepeatSales } from './byHand/worthRepeatSales.ts';
import { runById } from './runById.ts';
import { noKnowledge, outputOf } from './testing/outputOf.ts';
import { worthByReading } from './worthByReading.ts';
import { worthComparables } from './worthComparables.ts';
import { worthIndex } from './worthIndex.ts';

// Values and their sources: test/reference/valuation.json.

const near = (found: unknown, wanted: unknown, tolerance: number, at = ''): void => {
  if (typeof wanted === 'number') {
    expect(Math.abs((found as number) - wanted), at).toBeLessThanOrEqual(tolerance);
    return;
  }
  expect(Object.keys(found as object).length, at).toBeGreaterThanOrEqual(
    Object.keys(wanted as object).length,
  );
  for (const [key, value] of Object.entries(wanted as object))
    near((found as Record<string, unknown>)[key], value, tolerance, `${at} ${key}`);
};

describe('values from outside', () => {
  test.each(reference.index)('an index: $id', ({ input, expected, tolerance }) => {
    near(outputOf(worthIndex, input), expected, tolerance);
  });

  test('the discount of a block, as held and as returned', () => {
    const { aggregate, held, returned, expected, tolerance } = reference.blockage;
    const change = (to: number) =>
      outputOf(worthIndex, { amount: aggregate, indices: { from: aggregate, to } }).percentChange;
    near([-change(held), -change(returned)], [expected.heldDiscountPercent, expected.returnedDiscountPercent], tolerance); // biome-ignore format: a row
  });

  test.each(reference.repeatSales)('sales twice over: $id', ({ input, expected, tolerance }) => {
    near(outputOf(worthRepeatSales, input), expected, tolerance);
  });

  test('log prices by what a piece has: sets.line', () => {
    const { rows, expected, tolerance } = reference.hedonic;
    const y = rows.map(([price]) => Math.log(price as number));
    near(outputOf(setsLine, { y, x: rows.map((row) => row.slice(1)) }), expected, tolerance);
  });

  test.each(reference.grid)('a grid: $id', ({ comparables, expected, tolerance }) => {
    const { grid, ...found } = outputOf(worthComparables, { subject: 'a chest', comparables, asOf: '2026' });
    const { grid: wanted, ...rest } = expected;
    near(found, rest, tolerance);
    near(
      grid.map(({ saleSteps, pieceSteps, ...each }) => ({
        ...each,
        running: saleSteps.map(({ running }) => running),
        pieceSteps: pieceSteps.map(({ adjustment }) => adjustment),
      })),
      wanted,
      tolerance,
    );
  });

  test('a block sold off', () => {
    const { input, expected, tolerance } = reference.absorption;
    near(outputOf(worthAbsorption, input), expected, tolerance);
  });
});

describe('comparables', () => {
  const sale = { price: 1000, date: '2025', premiumIncluded: true };
  const point = (basis: string, ...comparables: object[]) =>
    outputOf(worthComparables, { subject: 'a chest', asOf: '2026', basis, comparables });

  test('hammer and premium: brought to the basis exactly, and never guessed', () => {
    const hammer = { ...sale, premiumIncluded: false, premiumPercent: 25 };
    expect(point('with-premium', hammer).point).toBe(1250);
    expect(point('hammer', { ...sale, premiumPercent: 25 }).point).toBe(800);
    expect(point('hammer', hammer).point).toBe(1000);
    // Had the division been rounded, a third would not come back.
    const third = { ...sale, premiumPercent: 50, adjustments: [{ why: 'half as much again', percent: 50 }] };
    expect(point('hammer', third).point).toBe(1000);
    const asked = { subject: '', asOf: '2026', basis: 'hammer', comparables: [sale] };
    const refused = runById('worth.comparables', asked, noKnowledge);
    expect(refused.ok ? [] : refused.faults.map(({ path }) => path)).toEqual([
      'comparables[0].premiumPercent',
    ]);
  });

  test('the range: none for one sale, within the sales, the same for a seed, and wider the more they scatter', () => {
    expect(point('with-premium', sale)).toMatchObject({ low: null, high: null });
    const spread = (by: number) =>
      point('with-premium', ...[-2, -1, 0, 1, 2].map((step) => ({ ...sale, price: 1000 + step * by })));
    const [narrow, wide] = [spread(10), spread(100)];
    expect(wide).toEqual(spread(100));
    expect((wide.high as number) - (wide.low as number)).toBeCloseTo(10 * ((narrow.high as number) - (narrow.low as number)), 6); // biome-ignore format: a row
    // The mean of five draws from −2 … 2 has variance 2/5; nine tenths of a normal curve lie within 1.645 of its deviation: 104.
    expect(Math.abs((wide.high as number) - 1104)).toBeLessThan(20);
    expect(Math.abs((wide.low as number) - 896)).toBeLessThan(20);
  });

  test('a sale without weight moves neither point nor range', () => {
    const others = [{ ...sale, price: 900 }, { ...sale, price: 1100 }]; // biome-ignore format: a row
    const { point: before, low, high } = point('with-premium', ...others);
    expect(point('with-premium', ...others, { ...sale, price: 90_000, weight: 0 })).toMatchObject({
      point: before,
    });
    expect([low, high]).toEqual([900, 1100]);
  });

  test.each<[object, string]>([
    [{ ...sale, date: '2027' }, 'comparables[0].date'],
    [{ ...sale, weight: 0 }, 'comparables'],
    [{ ...sale, adjustments: [{ why: '', percent: 5 }] }, 'comparables[0].adjustments[0].why'],
    [{ ...sale, adjustments: [{ why: 'size', percent: 5, amount: 5 }] }, 'comparables[0].adjustments[0]'],
  ])('%o is refused in a sentence', (comparable, path) => {
    const asked = { subject: '', asOf: '2026', comparables: [comparable] };
    const refused = runById('worth.comparables', asked, noKnowledge);
    expect(refused.ok ? [] : refused.faults.map((fault) => fault.path)).toEqual([path]);
  });
});

describe('worth by reading', () => {
  const asked = { posterior: { old: 0.6, copy: 0.4 }, values: { old: [900, 1100], copy: [50, 150] } };

  test('worked by hand', () => {
    const found = outputOf(worthByReading, { ...asked, price: 800 });
    // 0.6 · 1000 + 0.4 · 100; distances 360 and 540.
    expect(found.expected).toBeCloseTo(640, 9);
    expect(found.atStake).toBeCloseTo(0.6 * 360 + 0.4 * 540, 9);
    // A twentieth of all is an eighth of the copy’s four tenths: 50 + 100/8; at the top a twelfth of the old one’s six tenths: 1100 − 200/12.
    expect(found.low).toBeCloseTo(62.5, 5);
    expect(found.high).toBeCloseTo(1100 - 200 / 12, 5);
    // Unexamined nobody buys at 800; settled, six times in ten for a gain of 200.
    expect(found.settled).toEqual({ lessAtStake: expect.closeTo(432, 9), forBuyer: expect.closeTo(120, 9) });
  });

  test('an examination that tells nothing is worth nothing, and none surpasses one that settles all', () => {
    const with_ = (old: number, copy: number) =>
      outputOf(worthByReading, {
        ...asked,
        price: 800,
        examination: {
          cost: 30,
          outcomes: [
            { name: 'found', given: { old, copy } },
            { name: 'not found', given: { old: 1 - old, copy: 1 - copy } },
          ],
        },
      });
    expect(with_(0.5, 0.5).examination?.lessAtStake).toBeCloseTo(0, 9);
    const some = with_(0.9, 0.2);
    // Found: 0.54 + 0.08 = 0.62; expected there (540 + 8)/0.62 = 883.87, so that 0.62 · 83.87 = 52 is gained; not found, nobody buys.
    expect(some.examination).toMatchObject({ forBuyer: expect.closeTo(52, 9), forBuyerLessCost: expect.closeTo(22, 9) }); // biome-ignore format: a row
    expect(some.examination?.lessAtStake).toBeLessThan(some.settled.lessAtStake);
    expect(with_(1, 0).examination).toMatchObject({ forBuyer: expect.closeTo(120, 9), lessAtStake: expect.closeTo(432, 9) }); // biome-ignore format: a row
  });

  test('nothing hangs on a doubt that is not there', () => {
    expect(outputOf(worthByReading, { ...asked, posterior: { old: 1, copy: 0 } })).toMatchObject({ expected: 1000, atStake: 0 }); // biome-ignore format: a row
  });

  test.each<[object, string]>([
    [{ posterior: { old: 0.6, fake: 0.4 } }, 'values.fake'],
    [{ posterior: { old: 0 } }, 'posterior'],
    [{ values: { old: [900, 800], copy: [1, 2] } }, 'values.old'],
    [{ examination: { outcomes: [{ name: 'a', given: { old: 0.5, copy: 0.5 } }, { name: 'b', given: { old: 0.5, copy: 0.4 } }] } }, 'examination.outcomes'], // biome-ignore format: a row
  ])('%o is refused in a sentence', (more, path) => {
    const refused = runById('worth.byReading', { ...asked, ...more }, noKnowledge);
    expect(refused.ok ? [] : refused.faults.map((fault) => fault.path)).toEqual([path]);
  });
});

test.each<[string, object, string]>([
  ['worth.index', { amount: 1, fromYear: 1913 }, 'fromYear'],
  [
    'worth.repeat-sales',
    { pairs: [{ firstPeriod: 1, firstPrice: 1, secondPeriod: 1, secondPrice: 2 }] },
    'pairs[0]',
  ],
  ['worth.repeat-sales', { pairs: [{ firstPeriod: 1, firstPrice: 1, secondPeriod: 2, secondPrice: 2 }], weights: [1, 2] }, 'weights'], // biome-ignore format: a row
  ['worth.repeat-sales', { pairs: [{ firstPeriod: 1, firstPrice: 1, secondPeriod: 2, secondPrice: 2 }, { firstPeriod: 3, firstPrice: 1, secondPeriod: 4, secondPrice: 2 }] }, 'pairs'], // biome-ignore format: a row
])('%s %o is refused in a sentence', (id, input, path) => {
  const refused = runById(id, input, noKnowledge);
  expect(refused.ok ? [] : refused.faults.map((fault) => fault.path)).toEqual([path]);
});

// 150 × 313.689 ÷ 17.542, worked on paper; both indices as the Bureau's yearly means have them.
test('consumer prices of the knowledge files: the sum, its figures, and what is provisional', async () => {
  const context = { knowledge: await houseKnowledge(), yearNow: 2026 };
  const found = outputOf(worthIndex, { amount: 150, fromYear: 1925, toYear: 2024 }, context);
  expect(found.amount).toBeCloseTo(2682.325, 3);
  expect(found).toMatchObject({ rounded: 2700, indices: { from: 17.542, to: 313.689 } });
  expect(found.remarks).toEqual([expect.stringContaining('no evidence of a present worth')]);
  const late = outputOf(worthIndex, { amount: 150, fromYear: 1990, toYear: 2025 }, context);
  expect(late.remarks[0]).toContain('11 months');
  const refused = runById('worth.index', { amount: 1, fromYear: 1912, toYear: 2024 }, context);
  expect(refused.ok ? '' : refused.faults[0]?.message).toContain('from 1913 to 2026');
});
