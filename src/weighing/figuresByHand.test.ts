import { describe, expect, it } from 'vitest';
import { betaDraw, betaFigure } from '../evidence/betaDraws.ts';
import { blunting } from '../evidence/bluntedDraw.ts';
import { caseFigures } from '../evidence/caseFigures.ts';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { shareByYear } from '../evidence/signShares.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { shopPriors } from '../evidence/worlds.ts';
import { yearAxis } from '../evidence/yearAxis.ts';
import { normalDraw, seededRandom } from '../ground/seededRandom.ts';
import { posteriorFor } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { redraws } from './redraws.ts';
import { weighCase } from './weighCase.ts';

// Worked by hand; the numbers are typed here.

function preparedOf(knowledge: ReturnType<typeof smallKnowledge>, input: CaseToWeigh) {
  const ready = prepareCase(input, knowledge, 2026);
  if (!ready.ok) throw new Error('the case was refused');
  return ready.prepared;
}

describe('the share that shows a sign of a year', () => {
  const axis = yearAxis(1700, 1899, 10);
  const sign = (span: object) => ({
    ...(smallKnowledge().signs['early-nail'] as NonNullable<
      ReturnType<typeof smallKnowledge>['signs'][string]
    >),
    shows: { 'in-use': { in100: '42, 42–42' }, 'out-of-use': { in100: '2, 2–2' } },
    span: span as never,
  });
  /** By the middle year of its ten. */
  const at = (line: Float64Array, midYear: number) => line[(midYear - 1705) / 10];

  it('fades over the fifty years after it was common, where no end is told', () => {
    const line = shareByYear(sign({ earliest: 1700, commonFrom: 1700, commonUntil: 1750 }), axis, bestDraw());
    // Halfway, in 1775, half of 42 − 2 is left: 2 + 20 = 22 in 100; in 1795 a tenth, 2 + 4 = 6; from 1800 on 2.
    expect(at(line, 1745)).toBeCloseTo(0.42, 12);
    expect(at(line, 1775)).toBeCloseTo(0.22, 12);
    expect(at(line, 1795)).toBeCloseTo(0.06, 12);
    expect(at(line, 1805)).toBeCloseTo(0.02, 12);
  });

  it('rises from its earliest year, never shows before a hard floor, and falls to its latest', () => {
    const line = shareByYear(
      sign({ earliest: 1720, commonFrom: 1740, commonUntil: 1800, latest: 1820, hardFloor: true }),
      axis,
      bestDraw(),
    );
    // 1725 is a quarter of the way up: 2 + 10 = 12 in 100; 1815 a quarter of the way from the end: 12 again.
    expect([1715, 1725, 1745, 1815, 1825].map((year) => at(line, year))).toEqual(
      [0, 0.12, 0.42, 0.12, 0.02].map((share) => expect.closeTo(share, 12)),
    );
  });
});

describe('listed shops', () => {
  it('never take more than nine tenths of the period work', () => {
    const small = smallKnowledge();
    const shops = Object.fromEntries(
      Object.entries(small.shops).map(([id, shop]) => [
        id,
        { ...shop, years: [1700, 1800] as [number, number], share: { in100: '60, 60–60' } },
      ]),
    );
    const prepared = preparedOf({ ...small, shops }, { form: 'bench', mode: 'in-hand', findings: [] });
    const [unlisted, north, south] = shopPriors(prepared, bestDraw());
    // 60 and 60 in 100 are 120: each is cut to 45, and 10 are left for shops not listed.
    const bin = Math.floor((1750 - prepared.axis.fromYear) / prepared.axis.stepYears);
    expect([unlisted?.[bin], north?.[bin], south?.[bin]]).toEqual([
      expect.closeTo(0.1, 12),
      expect.closeTo(0.45, 12),
      expect.closeTo(0.45, 12),
    ]);
  });
});

describe('the trials of the ranges', () => {
  it('tell the middle nine tenths of what was drawn, and how often the reading led', () => {
    const knowledge = handKnowledge({ marked: ['50, 30–70', '50, 30–70', '20', '20'] });
    const findings: CaseToWeigh['findings'] = [{ sign: 'marked', state: 'present' }];
    const layout = layOut(preparedOf(knowledge, { form: 'box', mode: 'in-hand', findings }));
    const told = redraws(layout, 'period-intact', 'of-the-period', 101, 3);
    // The same 101 trials here, one by one: the 5 % point of 101 is the sixth, the 95 % point the sixth from the end.
    const random = seededRandom(3);
    const figures = caseFigures(layout.prepared).map(betaFigure);
    const blunt = blunting(layout.prepared.looks.map((look) => look.sign));
    const drawn = Array.from({ length: 101 }, () => {
      // First how blunt all signs are in this trial, half a width being usual; then the figures.
      const widths = normalDraw(random) / 2;
      const draw = blunt(betaDraw(random, figures), widths);
      const { readings, total } = posteriorFor(fixModel(layout, draw));
      const period = readings['period-intact'] / total;
      return { period, led: Object.values(readings).every((each) => each <= readings['period-intact']) };
    });
    const sorted = drawn.map((each) => each.period).toSorted((a, b) => a - b);
    expect(told.intervals['period-intact']).toEqual([
      expect.closeTo(sorted[5] ?? Number.NaN, 12),
      expect.closeTo(sorted[95] ?? Number.NaN, 12),
    ]);
    const led = drawn.filter((each) => each.led).length;
    expect(led).toBeGreaterThan(50);
    expect(led).toBeLessThan(101);
    expect(told.shareLeading).toBeCloseTo(led / 101, 12);
  });
});

describe('the findings that bind the years', () => {
  const small = smallKnowledge();
  const dated = (id: string, span: object) => ({
    ...(small.signs['late-line'] as NonNullable<(typeof small.signs)[string]>),
    id,
    span: span as never,
    shows: { 'in-use': { in100: '90, 90–90' }, 'out-of-use': { in100: '0.1, 0.1–0.1' } },
  });
  const knowledge = {
    ...small,
    signs: {
      // Seen only on pieces of 1750 and after, and only on pieces of 1740 and before.
      floor: dated('floor', { earliest: 1750, commonFrom: 1750, hardFloor: true }),
      gone: dated('gone', { earliest: 1600, commonFrom: 1600, commonUntil: 1740, latest: 1741 }),
    },
  };
  const binding = (sign: string) => {
    const result = weighCase(
      {
        form: 'bench',
        mode: 'in-hand',
        quick: true,
        claim: { period: [1700, 1790] },
        findings: [{ sign, state: 'present' }],
      },
      knowledge,
      { yearNow: 2026 },
    );
    return result.ok ? result.output.years.binding : [];
  };

  it('bind the early end where it could not have been there before, and the late end where it went out', () => {
    expect(binding('floor')).toEqual([{ sign: 'floor', part: null, end: 'from' }]);
    expect(binding('gone')).toEqual([{ sign: 'gone', part: null, end: 'to' }]);
  });
});
