import type { ReadingId } from '../piece/readings.ts';
import type { Layout } from './model.ts';
import type { Factor } from './unitFactor.ts';
import { worlds } from './worlds.ts';

/**
 * Masses by shop and period reading: index 0 is "unlisted", then the shops in order. Later pieces have no shop here.
 * On the scale of the whole product (times e^log).
 */
export function shopMasses(layout: Layout, whole: Factor): Record<ReadingId, number>[] {
  const { columns, configs, periodColumns, prepared } = layout;
  const bins = prepared.axis.bins;
  const sums = Array.from({ length: prepared.shops.length + 1 }, () => [0, 0, 0, 0]);
  for (let m = 0; m < configs.length; m++) {
    for (let c = 0; c < periodColumns; c++) {
      const row = sums[columns[c]?.shop ?? 0];
      if (row === undefined || worlds[columns[c]?.world ?? 0]?.making !== 'period') continue;
      for (let k = 0; k < 4; k++) {
        const from = (m * (k === 0 ? columns.length : periodColumns) + c) * bins;
        const sum = whole.sums[k] as Float64Array;
        let total = 0;
        for (let i = from; i < from + bins; i++) total += sum[i] as number;
        row[k] = (row[k] ?? 0) + total;
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
