import { lineAt } from './columnClasses.ts';
import type { Factor } from './factor.ts';
import type { Classes, ColumnCells, Layout } from './layout.ts';

/** A factor summed over the columns of each class, laid out as the unit's lines are. True values are these times e^log. */
export type ClassSums = { values: Float64Array; log: number };

/** Sums a factor (all but a unit) over the classes that unit's looks tell apart. */
export function classSums(layout: Layout, factor: Factor, classes: Classes): ClassSums {
  const { configs, cells, cellCount, columns, periodCellCount } = layout;
  const values = new Float64Array(configs.length * classes.size);
  for (let m = 0; m < configs.length; m++) {
    for (let c = 0; c < columns.length; c++) {
      const { first, count, offset } = cells[c] as ColumnCells;
      const skip = first - (classes.first[classes.of[c] as number] as number);
      for (let k = 0; k < (classes.levels[classes.of[c] as number] as number); k++) {
        const from = m * (k === 0 ? cellCount : periodCellCount) + offset;
        const to = lineAt(classes, m, classes.of[c] as number, k) + skip;
        const all = factor.sums[k] as Float64Array;
        for (let i = 0; i < count; i++)
          values[to + i] = (values[to + i] as number) + (all[from + i] as number);
      }
    }
  }
  return { values, log: factor.log };
}
