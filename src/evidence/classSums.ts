import { type Classes, lineAt } from './columnClasses.ts';
import type { Factor } from './factor.ts';
import type { ColumnCells, Layout } from './layout.ts';
import type { Sums } from './readingMasses.ts';
import { type Making, worlds } from './worlds.ts';

/** A factor summed over the columns of each class, laid out as the unit's lines are. True values are these times e^log. */
export type ClassSums = { values: Float64Array; log: number };

/** Sums a factor (all but a unit) over the classes that unit's looks tell apart. */
export function classSums(layout: Layout, factor: Factor, classes: Classes): ClassSums {
  const { configs, cells, cellCount, columns, periodColumns, periodCellCount } = layout;
  const values = new Float64Array(configs.length * classes.size);
  for (let m = 0; m < configs.length; m++) {
    for (let c = 0; c < columns.length; c++) {
      const { first, count, offset } = cells[c] as ColumnCells;
      const skip = first - (classes.first[classes.of[c] as number] as number);
      for (let k = 0; k < (c < periodColumns ? 4 : 1); k++) {
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

/**
 * All cells summed with a unit put back in.
 *
 * @param rest, lines  tables over the same configs and classes
 */
export function sumsWith(
  classes: Classes,
  configs: number,
  rest: Float64Array,
  lines: Float64Array,
  log: number,
): Sums {
  const byMaking: Record<Making, number> = { period: 0, 'bench-copy': 0, 'machine-copy': 0, 'to-deceive': 0 };
  const strict: [number, number, number] = [0, 0, 0];
  for (let config = 0; config < configs; config++) {
    classes.columns.forEach((column, i) => {
      for (let k = 0; k < (classes.levels[i] as number); k++) {
        const at = lineAt(classes, config, i, k);
        const end = at + (classes.count[i] as number);
        let sum = 0;
        for (let j = at; j < end; j++) sum += (rest[j] as number) * (lines[j] as number);
        if (k === 0) byMaking[worlds[column.world]?.making ?? 'period'] += sum;
        else strict[k - 1] = (strict[k - 1] as number) + sum;
      }
    });
  }
  return { byMaking, strict, log };
}
