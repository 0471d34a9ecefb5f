import type { ReadingId } from '../piece/readings.ts';
import type { ColumnCells, Layout } from './model.ts';
import type { Factor } from './unitFactor.ts';

/**
 * Masses by shop and period reading: index 0 is "unlisted", then the shops in order. Later pieces have no shop here.
 * On the scale of the whole product (times e^log).
 */
export function shopMasses(layout: Layout, whole: Factor): Record<ReadingId, number>[] {
  const { columns, configs, cells, cellCount, periodCellCount, periodColumns, prepared } = layout;
  const sums = Array.from({ length: prepared.shops.length + 1 }, () => [0, 0, 0, 0]);
  for (let m = 0; m < configs.length; m++) {
    for (let c = 0; c < periodColumns; c++) {
      const row = sums[columns[c]?.shop ?? 0] as number[];
      const { count, offset } = cells[c] as ColumnCells;
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
