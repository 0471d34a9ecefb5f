import { expect, it } from 'vitest';
import { bestDraw } from '../evidence/figures.ts';
import type { Factor } from './factor.ts';
import type { Layout } from './layout.ts';
import type { Model } from './model.ts';
import { periodMass, shopPosterior, shopProbabilities } from './shopPosterior.ts';

// A model typed by hand: three tens of years, two make-up states, period work of no listed shop and of the first, and one
// later copy. The second shop has no scenario of its own.
const shop = (years: [number, number], in100: string) => ({ placeWords: [], years, share: { in100 } });
const layout = {
  prepared: {
    shops: [shop([1700, 1790], '20, 20–20'), shop([1710, 1790], '10, 10–10')],
    axis: { fromYear: 1700, stepYears: 10, bins: 3 },
    place: '',
    knowledge: { making: { claimedPlace: { fits: 5, elsewhere: 0.5 } } },
  },
  scenarios: [{ shop: 0 }, { shop: 1 }, { shop: 0 }],
  periodScenarios: 2,
  cells: [
    { first: 0, count: 3, offset: 0 },
    { first: 1, count: 2, offset: 3 },
    { first: 2, count: 1, offset: 5 },
  ],
  cellCount: 6,
  periodCellCount: 5,
  cutsetStates: [{ happened: [false] }, { happened: [true] }],
} as unknown as Layout;

/** All histories, those with no make-up, those not improved either, those intact; the two make-up states one after the other. */
const whole: Factor = {
  sums: [
    [1, 2, 3, 4, 5, 600, 7, 8, 9, 10, 11, 600],
    [1, 1, 2, 3, 4, 1, 0, 1, 2, 1],
    [1, 1, 1, 2, 2, 0, 0, 0, 1, 0],
    [0, 1, 1, 2, 1, 0, 0, 0, 0, 0],
  ].map((line) => Float64Array.from(line)),
  log: 0,
};
const later = { 'later-bench-copy': 0, 'later-machine-copy': 0, 'made-to-deceive': 0 };

it('shares period work out by shop and reading, later work left out', () => {
  // Of no listed shop: 1+2+3+7+8+9 = 30, 1+1+2+1+0+1 = 6, 1+1+1 = 3, 0+1+1 = 2. Of the first: 4+5+10+11 = 30, 3+4+2+1 = 10, 2+2+1 = 5, 2+1 = 3.
  expect(shopPosterior(layout, whole)).toEqual([
    { 'period-intact': 2, 'period-repaired': 1, 'period-altered': 3, 'made-up': 24, ...later },
    { 'period-intact': 3, 'period-repaired': 2, 'period-altered': 5, 'made-up': 20, ...later },
    { 'period-intact': 0, 'period-repaired': 0, 'period-altered': 0, 'made-up': 0, ...later },
  ]);
});

it('takes a difference that rounding put below nothing for nothing', () => {
  const rounded = (k: number): Factor => ({
    log: 0,
    sums: whole.sums.map((line, level) => line.map((each) => (level === k ? each * 100 : each))),
  });
  expect(shopPosterior(layout, rounded(3))[0]?.['period-repaired']).toBe(0);
  expect(shopPosterior(layout, rounded(2))[0]?.['period-altered']).toBe(0);
  expect(shopPosterior(layout, rounded(1))[0]?.['made-up']).toBe(0);
});

it('adds up what a shop has', () => {
  expect(shopPosterior(layout, whole).map(periodMass)).toEqual([30, 30, 0]);
  expect(periodMass(undefined)).toBe(0);
});

it('gives a shop its own mass, and one that nothing tells apart its share of the unlisted, year by year', () => {
  const model = { layout, draw: bestDraw() } as Model;
  const [first, second] = shopProbabilities(model, whole, 300);
  expect(first).toBeCloseTo(30 / 300, 12);
  // Unlisted work by tens of years: 8, 10, 12. The second shop works from 1710 on: there it has 10 in 100 beside the 70 of
  // shops not listed, an eighth: of 10 and of 12 together 2.75.
  expect(second).toBeCloseTo(2.75 / 300, 12);
  expect(shopProbabilities(model, whole, 0)).toEqual([0, 0]);
});
