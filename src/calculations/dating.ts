import { z } from 'zod';
import { type DatingSpan, datingSpan, type NamedSign } from '../dating/datingSpan.ts';
import type { Fault } from '../ground/fault.ts';
import { figureNumbers } from '../knowledge/figuresOf.ts';
import type { Knowledge, Sign } from '../knowledge/schema.ts';
import { type CalculationResult, defineCalculation } from './define.ts';

const year = z.number().min(1000).max(2100);
const weight = z.number().positive().max(1e6).optional();

const ownSpan = z.strictObject({
  /** What it is called in the answer; without it, “sign 1” and so on. */
  name: z.string().min(1).optional(),
  introduced: z.strictObject({ earliest: year, commonFrom: year }).optional(),
  phasedOut: z.strictObject({ commonUntil: year, latest: year }).optional(),
  weight,
});
const input = z.strictObject({
  signs: z
    .array(z.union([z.strictObject({ sign: z.string().min(1), weight }), ownSpan]))
    .min(1)
    .max(200),
  /** The years that are possible at all, each as likely as the next. */
  prior: z.tuple([year, year]).optional(),
  /** product: all signs are of one date. sum: a mix of things, each with a date of its own. */
  combine: z.enum(['product', 'sum']).default('product'),
  /** Shares whose years are wanted: 0.05 for the year before which one twentieth lies. */
  shares: z.array(z.number().gt(0).lt(1)).max(100).optional(),
  /** Rising years between which shares are wanted. */
  edges: z.array(year).min(2).max(500).optional(),
});
type Input = z.infer<typeof input>;
const interval = z.tuple([z.number(), z.number()]);

/** The first year of the model’s own axis: where a sign of the knowledge files does not rule it out, dating begins here. */
const firstYear = 1600;

/** `dating.span`: see its own fields. */
export const datingSpanCalculation = defineCalculation({
  id: 'dating.span',
  answers: 'Between which years was it made, by signs that came into use and went out again?',
  method:
    'A sign’s share rises straight from its earliest year to the year it is common from, stays, and falls straight from commonUntil to latest; an ' +
    'end left out is open. With given years nothing shows it outside them. A sign by its id has the span of the knowledge files (up to the year until which it is rare it shows at most a twentieth): outside it the share is out-of-use over ' +
    'in-use, and a hard floor rules out every earlier year; where commonUntil has no latest, it fades over fifty years. product multiplies the signs ' +
    '(all of one date), sum adds them by weight (a mix). p50 and p90 are the shortest spans that hold 50 in 100 and 90 in 100 (highest density); density ' +
    'is the share a year at each whole year; quantiles answers shares, bins answers edges; overlap is the integral of the product of the signs’ own densities, where all are closed. A sign binds an end if p90 would reach a year or more further without it. Signs that leave no ' +
    'year together are the fault dating.no-year, which names each pair.',
  source:
    'Trapezoids after van Dorp and Kotz (2003), sums after Ratcliffe (2000), products of independent indications: from memory. Spans by id: the sources in the knowledge files.',
  input,
  output: z.strictObject({
    p50: interval,
    p90: interval,
    median: z.number(),
    mean: z.number(),
    sd: z.number(),
    density: z.array(interval),
    quantiles: z.array(interval).optional(),
    bins: z.array(z.strictObject({ from: z.number(), to: z.number(), share: z.number() })).optional(),
    overlap: z.number().optional(),
    binding: z.array(z.strictObject({ sign: z.string(), end: z.enum(['from', 'to']), byYears: z.number() })),
  }),
  example: {
    signs: [
      { name: 'screw type', introduced: { earliest: 1815, commonFrom: 1830 } },
      {
        name: 'veneer',
        introduced: { earliest: 1730, commonFrom: 1750 },
        phasedOut: { commonUntil: 1850, latest: 1880 },
      },
    ],
    prior: [1700, 1900],
  },
  run: (asked, context) => {
    const read = namedSigns(asked, context.knowledge);
    if (!read.ok) return read;
    const years = asked.prior ?? widestYears(read.output, context.yearNow);
    if (!(years[0] < years[1])) return { ok: false, faults: [backwards('prior', years)] };
    const { shares, edges } = asked;
    if (edges?.some((each, at) => at > 0 && each <= (edges[at - 1] as number)))
      return { ok: false, faults: [backwards('edges', edges)] };
    const weights = asked.signs.map((each) => each.weight ?? 1);
    const span = datingSpan(
      read.output,
      years,
      asked.combine === 'sum' ? { way: 'sum', weights } : { way: 'product' },
      { shares, edges },
    );
    if (!span.possible) return { ok: false, faults: noYear(span) };
    const { possible: _, quantiles, bins, overlap, ...output } = span;
    return {
      ok: true,
      output: {
        ...output,
        ...(shares === undefined ? {} : { quantiles }),
        ...(edges === undefined ? {} : { bins }),
        ...(overlap === undefined ? {} : { overlap }),
      },
    };
  },
});

function namedSigns({ signs }: Input, knowledge: Knowledge): CalculationResult<NamedSign[]> {
  const faults: Fault[] = [];
  const read = signs.map((each, index): NamedSign => {
    const path = `signs[${index}]`;
    if ('sign' in each) {
      const known = knowledge.signs[each.sign];
      if (known?.span === undefined) faults.push(undated(`${path}.sign`, each.sign, known));
      return known?.span === undefined ? { name: each.sign } : { name: each.sign, ...ofKnowledge(known) };
    }
    const { introduced, phasedOut } = each;
    if (introduced === undefined && phasedOut === undefined) faults.push(noSpan(path));
    const years = [introduced?.earliest, introduced?.commonFrom, phasedOut?.commonUntil, phasedOut?.latest];
    const given = years.filter((value) => value !== undefined);
    if (given.some((value, at) => at > 0 && value < (given[at - 1] as number)))
      faults.push(backwards(path, given));
    return { name: each.name ?? `sign ${index + 1}`, ...introduced, ...phasedOut };
  });
  return faults.length > 0 ? { ok: false, faults } : { ok: true, output: read };
}

/** A sign of the knowledge files; it fades over fifty years where no latest year is known. */
function ofKnowledge({ span, shows }: Sign): Omit<NamedSign, 'name'> {
  if (span === undefined) return {};
  const best = (state: string) => (shows[state] === undefined ? 0 : figureNumbers(shows[state]).best);
  const { earliest, rareUntil, commonFrom, commonUntil, hardFloor } = span;
  return {
    earliest,
    rareUntil,
    commonFrom,
    commonUntil,
    latest: span.latest ?? (commonUntil === undefined ? undefined : commonUntil + 50),
    hardFloor,
    outside: best('in-use') > 0 ? Math.min(1, best('out-of-use') / best('in-use')) : 0,
  };
}

function widestYears(signs: readonly NamedSign[], yearNow: number): [number, number] {
  const bends = signs.flatMap((sign) => [sign.earliest, sign.latest].filter((value) => value !== undefined));
  return [Math.min(firstYear, ...bends), Math.max(yearNow + 1, ...bends)];
}

function undated(path: string, id: string, sign: Sign | undefined): Fault {
  const message =
    sign === undefined
      ? `There is no sign “${id}”: take its id from the reference pages, or give its years as introduced and phasedOut.`
      : `“${sign.name}” has no years of its own: leave it out, or give its years as introduced and phasedOut.`;
  return { code: 'dating.sign-undated', path, message };
}

function noSpan(path: string): Fault {
  return {
    code: 'dating.no-span',
    path,
    message: 'This sign has no years: give introduced, phasedOut or both.',
  };
}

function backwards(path: string, years: readonly number[]): Fault {
  return {
    code: 'dating.years-backwards',
    path,
    message: `The years ${years.join(', ')} do not rise: put the earlier ones first.`,
  };
}

function noYear({ conflicts }: Extract<DatingSpan, { possible: false }>): Fault[] {
  if (conflicts.length === 0)
    return [
      {
        code: 'dating.no-year',
        path: 'signs',
        message: 'Together the signs leave no year: check their years.',
      },
    ];
  return conflicts.map(({ notBefore, from, notAfter, to }) => ({
    code: 'dating.no-year',
    path: 'signs',
    message: `“${notBefore}” rules out every year before ${from}, and “${notAfter}” every year after ${to}: look whether one of them is on a later part or tells of another thing, and weigh them apart.`,
  }));
}
