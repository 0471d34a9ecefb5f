import { describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import reference from '../../test/reference/dating.json' with { type: 'json' };
import { datingSpanCalculation } from './dating.ts';
import type { CalculationContext } from './define.ts';
import { runById } from './runById.ts';
import { outputOf } from './testing/outputOf.ts';

// Values and their sources: test/reference/dating.json.

const knowledge = await houseKnowledge();
const context: CalculationContext = { knowledge, yearNow: 2026 };

type Expected = {
  mean?: number;
  sd?: number;
  quantiles?: [number, number][];
  density?: [number, number][];
  binding?: string[];
  edges?: [number | null, number | null];
  conflicts?: string[][];
};

const run = (input: object) => runById('dating.span', input, context);

const span = (input: object) => outputOf(datingSpanCalculation, input, context);

describe('values from outside', () => {
  test.each(reference.spans.filter((each) => !('conflicts' in each.expected)))('$id', (check) => {
    const found = span(check.input);
    const { mean, sd, quantiles, density, binding, edges } = check.expected as unknown as Expected;
    const near = (value: number | undefined, wanted: number, what: string) =>
      expect(Math.abs((value as number) - wanted), what).toBeLessThanOrEqual(check.tolerance);
    if (mean !== undefined) near(found.mean, mean, 'mean');
    if (sd !== undefined) near(found.sd, sd, 'sd');
    for (const [share, year] of quantiles ?? []) if (share === 0.5) near(found.median, year, 'median');
    const byYear = new Map(found.density);
    for (const [year, height] of density ?? []) near(byYear.get(year), height, String(year));
    if (binding !== undefined) expect(found.binding.map(({ sign }) => sign)).toEqual(binding);
    if (edges !== undefined) {
      expect(found.density[0]?.[0]).toBe(edges[0]);
      expect(found.density.at(-1)?.[0]).toBe(edges[1] ?? 2027);
    }
  });

  test.each(reference.spans.filter((each) => 'conflicts' in each.expected))(
    '$id is a fault that names the pair',
    (check) => {
      const result = run(check.input);
      const { conflicts } = check.expected as unknown as Expected;
      if (result.ok || conflicts === undefined) throw new Error('no fault');
      expect(result.faults).toHaveLength(conflicts.length);
      conflicts.forEach((pair, index) => {
        expect(result.faults[index]?.code).toBe('dating.no-year');
        for (const name of pair) expect(result.faults[index]?.message).toContain(`“${name}”`);
      });
    },
  );
});

describe('the intervals', () => {
  const even = {
    introduced: { earliest: 1760, commonFrom: 1760 },
    phasedOut: { commonUntil: 1785, latest: 1785 },
  };

  test('of evenly spread years lie in their middle', () => {
    const { p50, p90 } = span({ signs: [even] });
    // By hand: half and nine tenths of 25 years about 1772.5.
    for (const [found, wanted] of [...zip(p50, [1766.25, 1778.75]), ...zip(p90, [1761.25, 1783.75])])
      expect(found).toBeCloseTo(wanted, 6);
  });

  test('of a triangle are cut at one height', () => {
    const signs = [
      { introduced: { earliest: 1700, commonFrom: 1720 }, phasedOut: { commonUntil: 1720, latest: 1760 } },
    ];
    const { p50, p90 } = span({ signs });
    // By hand: outside the height h the triangle keeps h², so h = √½ and √0.1.
    for (const [[from, to], h] of [
      [p50, Math.SQRT1_2],
      [p90, Math.sqrt(0.1)],
    ] as const) {
      expect(from).toBeCloseTo(1700 + 20 * h, 6);
      expect(to).toBeCloseTo(1760 - 40 * h, 6);
    }
  });

  test('a prior narrows, and years it excludes have no density', () => {
    const { density, p90 } = span({ signs: [even], prior: [1770, 1900] });
    expect(density[0]?.[0]).toBe(1770);
    expect(p90[0]).toBeCloseTo(1770.75, 6);
  });
});

const zip = (a: readonly number[], b: readonly number[]) =>
  a.map((each, i) => [each, b[i] as number] as const);

describe('signs of the knowledge files', () => {
  test('a hard floor rules out every earlier year, a soft one does not', () => {
    const dated = Object.values(knowledge.signs).filter((sign) => sign.span !== undefined);
    const hard = dated.filter((sign) => sign.span?.hardFloor);
    const soft = dated.filter((sign) => !sign.span?.hardFloor && (sign.span?.earliest ?? 0) > 1700);
    expect(hard.length).toBeGreaterThan(0);
    expect(soft.length).toBeGreaterThan(0);
    for (const { id, span: years } of hard)
      expect(span({ signs: [{ sign: id }] }).density[0]?.[0], id).toBe(years?.earliest);
    for (const { id } of soft) expect(span({ signs: [{ sign: id }] }).density[0]?.[0], id).toBe(1600);
  });

  test('a sign that came late binds the first year', () => {
    const { binding } = span({ signs: [{ sign: 'nail-wire' }, { sign: 'nail-cut' }] });
    expect(binding.find(({ end }) => end === 'from')?.sign).toBe('nail-wire');
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  const own = { introduced: { earliest: 1760, commonFrom: 1770 } };
  test.each<[object, string, string]>([
    [{ signs: [] }, 'signs', 'at least 1 entry'],
    [{ signs: [{ sign: 'saw-singing' }] }, 'signs[0].sign', 'take its id from the reference pages'],
    [{ signs: [{ sign: 'bare-wood-darkened' }] }, 'signs[0].sign', 'has no years of its own'],
    [{ signs: [{}] }, 'signs[0]', 'give introduced, phasedOut or both'],
    [
      { signs: [{ introduced: { earliest: 1780, commonFrom: 1770 } }] },
      'signs[0]',
      'put the earlier ones first',
    ],
    [{ signs: [own], prior: [1900, 1700] }, 'prior', 'put the earlier ones first'],
    [{ signs: [own], prior: [1700, 1750] }, 'signs', 'the years given as prior'],
  ])('%o', (input, path, words) => {
    const result = run(input);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
