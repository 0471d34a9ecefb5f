import { describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import { randomFrom } from '../../test/kits/surfaces/random.ts';
import reference from '../../test/reference/wood.json' with { type: 'json' };
import { mean } from '../ground/statistics.ts';
import { panelLoss } from '../wood/panelLoss.ts';
import type { CalculationContext } from './define.ts';
import { runById } from './runById.ts';
import { outputOf } from './testing/outputOf.ts';
import { woodPanelLoss } from './woodPanel.ts';

const knowledge = await houseKnowledge();
const context: CalculationContext = { knowledge, yearNow: 2026 };

const panel = (input: object) => outputOf(woodPanelLoss, input, context);

const moving = reference.cases.filter(
  ({ calculation, input }) =>
    calculation === 'wood.movement' && 'C' in input && !('method' in input && input.method !== 'coefficient'),
) as unknown as { id: string; input: { C: number; widthMm: number; fromMoisturePercent: number; toMoisturePercent: number }; expected: { changeMm: number }; tolerance: number }[]; // biome-ignore format: one type

describe('values from outside', () => {
  test('there are some', () => expect(moving.length).toBeGreaterThan(0));
  test.each(moving)(
    'a certain loss is the movement of printed examples: $id',
    ({ input, expected, tolerance }) => {
      const sure = (mean: number) => ({ mean, sd: 0 });
      const part = {
        widthMm: input.widthMm,
        coefficient: sure(input.C),
        moistureNow: sure(input.toMoisturePercent),
      };
      const { lossMm, sdMm } = panelLoss(part, sure(input.fromMoisturePercent), true);
      expect(Math.abs(lossMm + expected.changeMm)).toBeLessThanOrEqual(tolerance);
      expect(sdMm).toBe(0);
    },
  );
});

test('its spread is that of drawn boards', () => {
  const random = randomFrom(13);
  const [c, made, now] = [
    { mean: 0.0025, sd: 0.0004 },
    { mean: 15, sd: 2 },
    { mean: 8, sd: 1 },
  ];
  const drawn = Array.from({ length: 40_000 }, () => {
    const of = ({ mean, sd }: { mean: number; sd: number }) => mean + sd * random.normal();
    return 450 * of(c) * (of(made) - of(now));
  });
  const average = mean(drawn);
  const sd = Math.sqrt(drawn.reduce((sum, each) => sum + (each - average) ** 2, 0) / drawn.length);
  const found = panelLoss({ widthMm: 450, coefficient: c, moistureNow: now }, made, true);
  expect(Math.abs(found.lossMm - average)).toBeLessThan(0.06);
  expect(Math.abs(found.sdMm / sd - 1)).toBeLessThan(0.02);
});

describe('wood.panel-loss', () => {
  const board = { wood: 'pine-eastern-white', cut: 'flat-sawn', widthMm: 440 };
  test('a width measured now goes back to the making, so that now is what was measured', () => {
    const { drawing, expected } = panel(board);
    expect(drawing.acrossNowMm).toBeCloseTo(440, 9);
    expect(drawing.acrossAtMakingMm - expected.lossMm).toBeCloseTo(440, 9);
    expect(panel({ ...board, widthIs: 'at-making' }).drawing.acrossAtMakingMm).toBe(440);
  });

  test('quarter-sawn loses less; recent wood hardly any, or gains', () => {
    const flat = panel(board);
    expect(panel({ ...board, cut: 'quarter-sawn' }).expected.lossMm).toBeLessThan(flat.expected.lossMm);
    expect(flat.recent.lossMm).toBeLessThan(0.3 * flat.expected.lossMm);
  });

  test('a loss as long ago would leave it speaks for old, none for recent, a careless measure for neither', () => {
    const seen = (seenMm: number, sigmaMm = 0.5) =>
      panel({ ...board, seenMm, sigmaMm }).likelihoodRatio ?? Number.NaN;
    const { lossMm } = panel(board).expected;
    expect(seen(lossMm)).toBeGreaterThan(5);
    expect(seen(-0.3)).toBeLessThan(0.5);
    expect(Math.abs(Math.log(seen(lossMm, 60)))).toBeLessThan(0.2);
    expect(panel(board).likelihoodRatio).toBeNull();
  });

  test('says which way it lies', () => {
    expect(panel({ ...board, part: 'panel' }).direction).toBe('side to side');
    expect(panel({ ...board, part: 'drawer-bottom' }).direction).toBe('front to back');
    expect(panel({ ...board, part: 'drawer-bottom', grain: 'front-to-back' }).direction).toBe('side to side');
  });

  test.each<[object, string, string]>([
    [{ ...board, cut: undefined }, 'cut', 'Say how the wood was cut'],
    [{ ...board, wood: 'plastic' }, 'wood', 'There is no wood'],
    [{ ...board, widthMm: -4 }, 'widthMm', 'above 0'],
    [{ ...board, indoors: 'the-moon' }, 'indoors', 'us-most'],
  ])('%o', (input, path, words) => {
    const result = runById('wood.panel-loss', input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
