import { type Making, worlds } from '../evidence/worlds.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Factor } from './factor.ts';
import type { Layout, ScenarioCells } from './layout.ts';

/** How much each reading weighs, not yet shared out: true posterior are these times e^log. */
export type Posterior = { readings: Record<ReadingId, number>; total: number; log: number };

/** Sums over makings, and over period work at the stricter levels, on the scale of e^log. */
export type Sums = { byMaking: Record<Making, number>; strict: [number, number, number]; log: number };

/** Sums a whole product into the readings. */
export function posteriorOf(layout: Layout, whole: Factor): Posterior {
  const sum = (k: number) => (whole.sums[k] as Float64Array).reduce((total, each) => total + each, 0);
  return posteriorFromSums({
    byMaking: massByMaking(layout, whole),
    strict: [sum(1), sum(2), sum(3)],
    log: whole.log,
  });
}

/** The readings from the sums by making and level. */
export function posteriorFromSums({
  byMaking,
  strict: [notMadeUp, notAltered, intact],
  log,
}: Sums): Posterior {
  // Differences of nearly equal sums can fall a rounding error below zero.
  const part = (more: number, less: number) => Math.max(0, more - less);
  const readings: Record<ReadingId, number> = {
    'period-intact': intact,
    'period-repaired': part(notAltered, intact),
    'period-altered': part(notMadeUp, notAltered),
    'made-up': part(byMaking.period, notMadeUp),
    'later-bench-copy': byMaking['bench-copy'],
    'later-machine-copy': byMaking['machine-copy'],
    'made-to-deceive': byMaking['to-deceive'],
  };
  return { readings, total: readingIds.reduce((total, id) => total + readings[id], 0), log };
}

function massByMaking(layout: Layout, whole: Factor): Record<Making, number> {
  const mass: Record<Making, number> = { period: 0, 'bench-copy': 0, 'machine-copy': 0, 'to-deceive': 0 };
  const sums = whole.sums[0] as Float64Array;
  for (let m = 0; m < layout.cutsetStates.length; m++) {
    layout.scenarios.forEach((scenario, c) => {
      const { offset, count } = layout.cells[c] as ScenarioCells;
      const at = m * layout.cellCount + offset;
      let total = 0;
      for (let i = at; i < at + count; i++) total += sums[i] as number;
      mass[worlds[scenario.world]?.making ?? 'period'] += total;
    });
  }
  return mass;
}

/** The readings as probabilities that sum to 1. */
export function shares(posterior: Posterior): Record<ReadingId, number> {
  return Object.fromEntries(
    readingIds.map((id) => [id, posterior.total > 0 ? posterior.readings[id] / posterior.total : 0]),
  ) as Record<ReadingId, number>;
}

/** The most probable reading; the earlier listed wins a tie. */
export function leadingOf(posterior: Posterior): ReadingId {
  return readingIds.reduce(
    (best, id) => (posterior.readings[id] > posterior.readings[best] ? id : best),
    readingIds[0],
  );
}
