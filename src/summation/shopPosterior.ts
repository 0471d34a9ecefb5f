import { shopPriors } from '../evidence/worlds.ts';
import type { ReadingId } from '../piece/readings.ts';
import type { Factor } from './factor.ts';
import type { Layout, ScenarioCells } from './layout.ts';
import type { Model } from './model.ts';

/**
 * Posterior by shop and period reading: index 0 is "unlisted", then the shops in order. Later pieces have no shop here.
 * On the scale of the whole product (times e^log).
 */
export function shopPosterior(layout: Layout, whole: Factor): Record<ReadingId, number>[] {
  const { scenarios, cutsetStates, cells, cellCount, periodCellCount, periodScenarios, prepared } = layout;
  const sums = Array.from({ length: prepared.shops.length + 1 }, () => [0, 0, 0, 0]);
  for (let m = 0; m < cutsetStates.length; m++) {
    for (let c = 0; c < periodScenarios; c++) {
      const row = sums[scenarios[c]?.shop ?? 0] as number[];
      const { count, offset } = cells[c] as ScenarioCells;
      for (let k = 0; k < 4; k++) {
        const from = m * (k === 0 ? cellCount : periodCellCount) + offset;
        const sum = whole.sums[k] as Float64Array;
        for (let i = from; i < from + count; i++) row[k] = (row[k] as number) + (sum[i] as number);
      }
    }
  }
  return sums.map(([all = 0, notMadeUp = 0, notAltered = 0, intact = 0]) => ({
    'period-intact': intact,
    'period-repaired': Math.max(0, notAltered - intact),
    'period-altered': Math.max(0, notMadeUp - notAltered),
    'made-up': Math.max(0, all - notMadeUp),
    'later-bench-copy': 0,
    'later-machine-copy': 0,
    'made-to-deceive': 0,
  }));
}

/** The mass of all period readings of one shop. */
export function periodMass(row: Record<ReadingId, number> | undefined): number {
  return row === undefined
    ? 0
    : row['period-intact'] + row['period-repaired'] + row['period-altered'] + row['made-up'];
}

/**
 * How probable each of the case's shops is, in their order. A shop without scenarios of its own differs from "unlisted" in
 * nothing that was seen: it has its share of that, year by year.
 */
export function shopProbabilities(model: Model, whole: Factor, total: number): number[] {
  const { layout, draw } = model;
  const { prepared } = layout;
  const rows = shopPosterior(layout, whole);
  const withScenarios = new Set(layout.scenarios.map((scenario) => scenario.shop));
  const priors = shopPriors(prepared, draw);
  const unlisted = unlistedByBin(layout, whole);
  return prepared.shops.map((_, index) => {
    const shop = index + 1;
    if (withScenarios.has(shop)) return total > 0 ? periodMass(rows[shop]) / total : 0;
    let mass = 0;
    unlisted.forEach((each, bin) => {
      const silent = priors.reduce(
        (sum, line, s) => (s === 0 || !withScenarios.has(s) ? sum + (line[bin] ?? 0) : sum),
        0,
      );
      // Above zero: shops not listed always have a tenth.
      mass += (each * (priors[shop]?.[bin] ?? 0)) / silent;
    });
    return total > 0 ? mass / total : 0;
  });
}

/** The mass of period work of no listed shop, by bin. */
function unlistedByBin(layout: Layout, whole: Factor): Float64Array {
  const mass = new Float64Array(layout.prepared.axis.bins);
  const sums = whole.sums[0] as Float64Array;
  layout.cutsetStates.forEach((_, m) => {
    layout.scenarios.slice(0, layout.periodScenarios).forEach((scenario, c) => {
      const { first, count, offset } = layout.cells[c] as ScenarioCells;
      const at = m * layout.cellCount + offset;
      if (scenario.shop === 0)
        for (let i = 0; i < count; i++)
          mass[first + i] = (mass[first + i] as number) + (sums[at + i] as number);
    });
  });
  return mass;
}
