import type { Classes } from './columnClasses.ts';
import type { Factor } from './factor.ts';
import type { ColumnCells, Layout } from './model.ts';
import { lineAt, type UnitLines } from './unitLines.ts';
import { type Making, worlds } from './worlds.ts';

/** A factor summed over the columns of each class, laid out as the unit's lines are. True values are these times e^log. */
export type ClassSums = { values: Float64Array; log: number };

/** Sums over makings, and over period work at the stricter levels, on the scale of e^log. */
export type Sums = { byMaking: Record<Making, number>; strict: [number, number, number]; log: number };

/** Sums a factor (all but a unit) over the classes that unit's looks tell apart. */
export function classSums(layout: Layout, factor: Factor, classes: Classes): ClassSums {
  const { configs, cells, cellCount, columns, periodColumns, periodCellCount, worldBins } = layout;
  const values = new Float64Array(lineAt(layout, classes, configs.length, 0, 0));
  for (let m = 0; m < configs.length; m++) {
    for (let c = 0; c < columns.length; c++) {
      const { first, count, offset } = cells[c] as ColumnCells;
      const skip = first - (worldBins[columns[c]?.world ?? 0]?.first ?? 0);
      for (let k = 0; k < (c < periodColumns ? 4 : 1); k++) {
        const from = m * (k === 0 ? cellCount : periodCellCount) + offset;
        const to = lineAt(layout, classes, m, classes.of[c] as number, k) + skip;
        const all = factor.sums[k] as Float64Array;
        for (let i = 0; i < count; i++)
          values[to + i] = (values[to + i] as number) + (all[from + i] as number);
      }
    }
  }
  return { values, log: factor.log };
}

/** All cells summed with the unit put back in. */
export function sumsWith(layout: Layout, classes: Classes, rest: ClassSums, unit: UnitLines): Sums {
  const byMaking: Record<Making, number> = { period: 0, 'bench-copy': 0, 'machine-copy': 0, 'to-deceive': 0 };
  const strict: [number, number, number] = [0, 0, 0];
  layout.configs.forEach((_, m) => {
    classes.columns.forEach((column, i) => {
      const making = worlds[column.world]?.making ?? 'period';
      const count = layout.worldBins[column.world]?.count ?? 0;
      const dot = (k: number) => {
        const at = lineAt(layout, classes, m, i, k);
        let sum = 0;
        for (let j = at; j < at + count; j++) sum += (rest.values[j] as number) * (unit.values[j] as number);
        return sum;
      };
      byMaking[making] += dot(0);
      if (making === 'period') for (let k = 1; k < 4; k++) strict[k - 1] = (strict[k - 1] as number) + dot(k);
    });
  });
  return { byMaking, strict, log: rest.log + unit.log };
}
