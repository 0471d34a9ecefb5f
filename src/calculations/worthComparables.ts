import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { seededRandom } from '../ground/seededRandom.ts';
import { mean, median, sum } from '../ground/statistics.ts';
import { capital } from '../ground/words.ts';
import { toldShares } from '../weighing/probabilityWords.ts';
import { adjustedComparable, type Comparable, weightedMean } from '../worth/comparableGrid.ts';
import { type Exact, exact } from '../worth/exactMoney.ts';
import { resampledRange } from '../worth/resampledRange.ts';
import { defineCalculation } from './define.ts';

const day = z.string().regex(/^\d{4}(-\d{2}(-\d{2})?)?$/, 'a date is written 2024, 2024-05 or 2024-05-31');
const percent = z.number().min(-100).max(1000);

const adjustment = z
  .strictObject({
    why: z.string().trim().min(1, 'every adjustment needs its reason'),
    /** Positive raises the comparable towards the piece valued: it is the lesser of the two. */
    percent: percent.optional(),
    amount: z.number().min(-1e12).max(1e12).optional(),
    /** sale: of the terms of the sale, one after the other; piece: of the piece, all on the price after the terms. */
    of: z.enum(['sale', 'piece']).default('piece'),
  })
  .refine(
    (each) => (each.percent === undefined) !== (each.amount === undefined),
    'give percent or amount, one of the two',
  );

const comparable = z.strictObject({
  name: z.string().max(300).optional(),
  price: z.number().positive().max(1e12),
  date: day,
  premiumIncluded: z.boolean(),
  /** The buyer’s premium of that sale, in percent of the hammer price: asked for where the price has to be brought to the basis. */
  premiumPercent: z.number().min(0).max(100).optional(),
  adjustments: z.array(adjustment).max(40).default([]),
  weight: z.number().min(0).max(1e6).default(1),
});

const input = z.strictObject({
  /** What is valued, in words. */
  subject: z.string().max(500),
  comparables: z.array(comparable).min(1).max(200),
  asOf: day,
  /** Which price is meant: what the hammer fell at, or what the buyer paid with the premium. */
  basis: z.enum(['hammer', 'with-premium']).default('with-premium'),
  seed: z
    .int()
    .min(0)
    .max(2 ** 31)
    .default(1),
  draws: z.int().min(100).max(20_000).default(4000),
});
type Input = z.infer<typeof input>;

const money = z.number();
const step = z.strictObject({ why: z.string(), adjustment: money, running: money.optional() });

/** `worth.comparables`: see its own fields. */
export const worthComparables = defineCalculation({
  id: 'worth.comparables',
  answers:
    'What do sales of like pieces say of this one, once each is brought to it, and how far do they scatter?',
  method:
    'Each price is first brought to the basis: hammer to with-premium by × (1 + premiumPercent/100), or back; a price that is on the other basis and has no premiumPercent is a fault, for none is guessed. Adjustments of: sale follow one another, each on what the ' +
    'one before left; those of: piece are all taken on the price after the terms and added up. point is the mean by weight. low and high hold 90 in 100 of the means of as many sales drawn again by their weights (bootstrap, seeded): the scatter among the sales chosen, nothing else, ' +
    'too narrow where they are few, and null for one. No adjustment for time is made by itself: yearsBefore says how old each sale is on asOf. Sums are exact fractions until told.',
  source:
    'Sequence of adjustments: common practice, held against a published note; the bootstrap: Efron (1979), from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    point: money,
    low: money.nullable(),
    high: money.nullable(),
    mean: money,
    median: money,
    range: z.tuple([money, money]),
    grid: z.array(
      z.strictObject({
        name: z.string(),
        price: money,
        onBasis: money,
        saleSteps: z.array(step),
        afterSale: money,
        pieceSteps: z.array(step),
        adjusted: money,
        netPercent: z.number(),
        grossPercent: z.number(),
        /** Its part of the point, from 0 to 1. */
        weight: z.number(),
        yearsBefore: z.number(),
      }),
    ),
    remarks: z.array(z.string()),
  }),
  example: {
    subject: 'A chest of four drawers (an invented example)',
    asOf: '2026-06-30',
    basis: 'with-premium',
    comparables: [
      {
        name: 'A',
        price: 3200,
        date: '2025-03-14',
        premiumIncluded: true,
        adjustments: [
          { why: 'taller', percent: -5 },
          { why: 'later handles', percent: 6 },
        ],
        weight: 5,
      },
      {
        name: 'B',
        price: 1800,
        date: '2024-10-02',
        premiumIncluded: false,
        premiumPercent: 25,
        adjustments: [{ why: 'restored top', percent: 12 }],
        weight: 2,
      },
      {
        name: 'C',
        price: 2750,
        date: '2023-05-20',
        premiumIncluded: true,
        adjustments: [
          { why: 'a forced sale', percent: 10, of: 'sale' },
          { why: 'larger', percent: -8 },
        ],
        weight: 3,
      },
    ],
  },
  run: (asked) => {
    const faults = faultsOf(asked);
    if (faults.length > 0) return { ok: false, faults };
    const bases = asked.comparables.map((each) => onBasis(each, asked.basis));
    const adjusted = asked.comparables.map((each, index) =>
      adjustedComparable({ ...partsOf(each), price: bases[index] as Exact }),
    );
    const weights = asked.comparables.map(({ weight }) => weight);
    const values = adjusted.map((each) => each.adjusted.valueOf());
    const range = resampledRange(values, weights, toldShares.most, asked.draws, seededRandom(asked.seed));
    return {
      ok: true,
      output: {
        point: weightedMean(
          adjusted.map((each) => each.adjusted),
          weights,
        ).valueOf(),
        low: range?.[0] ?? null,
        high: range?.[1] ?? null,
        mean: mean(values),
        median: median(values),
        range: [Math.min(...values), Math.max(...values)] as [number, number],
        grid: asked.comparables.map((each, index) => {
          const done = adjusted[index] as (typeof adjusted)[number];
          return {
            name: each.name ?? `comparable ${index + 1}`,
            price: each.price,
            onBasis: (bases[index] as Exact).valueOf(),
            saleSteps: done.termSteps.map(stepOut),
            afterSale: done.afterTerms.valueOf(),
            pieceSteps: done.characteristicSteps.map(stepOut),
            adjusted: done.adjusted.valueOf(),
            netPercent: done.netPercent.valueOf(),
            grossPercent: done.grossPercent.valueOf(),
            weight: each.weight / sum(weights),
            yearsBefore: yearsBetween(each.date, asked.asOf),
          };
        }),
        remarks: remarksOn(asked, values.length),
      },
    };
  },
});

function partsOf({ adjustments }: Input['comparables'][number]): Omit<Comparable, 'price'> {
  return {
    terms: adjustments.filter(({ of }) => of === 'sale'),
    characteristics: adjustments.filter(({ of }) => of === 'piece'),
  };
}

function onBasis(
  { price, premiumIncluded, premiumPercent }: Input['comparables'][number],
  basis: Input['basis'],
): Exact {
  const wanted = basis === 'with-premium';
  if (premiumIncluded === wanted) return exact(price);
  const factor = exact(premiumPercent as number)
    .div(100)
    .add(1);
  return wanted ? exact(price).mul(factor) : exact(price).div(factor);
}

function stepOut({ why, adjustment: change, running }: { why: string; adjustment: Exact; running?: Exact }) {
  return {
    why,
    adjustment: change.valueOf(),
    ...(running === undefined ? {} : { running: running.valueOf() }),
  };
}

function faultsOf({ comparables, asOf, basis }: Input): Fault[] {
  const faults = comparables.flatMap((each, index): Fault[] => {
    const path = `comparables[${index}]`;
    if (each.premiumIncluded !== (basis === 'with-premium') && each.premiumPercent === undefined)
      return [
        {
          code: 'worth.premium-missing',
          path: `${path}.premiumPercent`,
          message: `This price is ${each.premiumIncluded ? 'with' : 'without'} the buyer’s premium and is wanted ${each.premiumIncluded ? 'without' : 'with'} it: give the premium of that sale in percent of the hammer price.`,
        },
      ];
    if (each.date > asOf)
      return [
        {
          code: 'worth.after-date',
          path: `${path}.date`,
          message: `This sale of ${each.date} came after ${asOf}, the day the value is for: leave it out, or change the day.`,
        },
      ];
    return [];
  });
  return faults.length === 0 && comparables.every(({ weight }) => weight === 0)
    ? [
        {
          code: 'worth.no-weight',
          path: 'comparables',
          message: 'All weights are 0: give weight to one comparable at least.',
        },
      ]
    : faults;
}

function yearsBetween(from: string, to: string): number {
  const inYears = (text: string) => {
    const [year = 0, month = 7, day_ = 1] = text.split('-').map(Number);
    return year + (month - 1) / 12 + (day_ - 1) / 365;
  };
  return Math.max(0, Math.round((inYears(to) - inYears(from)) * 10) / 10);
}

function remarksOn({ comparables, asOf }: Input, many: number): string[] {
  const old = comparables.filter(
    ({ date, adjustments }) => yearsBetween(date, asOf) > 5 && !adjustments.some(({ of }) => of === 'sale'),
  );
  return [
    ...(many === 1 ? ['One sale shows no scatter: no range is told.'] : []),
    ...(many > 1 && many < 5
      ? ['With so few sales the range is too narrow: it knows of their own scatter only.']
      : []),
    ...(old.length === 0
      ? []
      : [
          `${capital(old.length === 1 ? 'one of the sales lies' : `${old.length} of the sales lie`)} more than five years back without an adjustment for time.`,
        ]),
  ];
}
