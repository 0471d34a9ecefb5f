import type { Factor } from './factor.ts';
import type { Classes, Layout, ScenarioCells } from './layout.ts';
import { noughts } from './memory.ts';
import { lineAt } from './scenarioClasses.ts';

/** A factor summed over the scenarios of each class, laid out as the clique's lines are. True values are these times e^log. */
export type ClassSums = { values: Float64Array; log: number };

/** Sums a factor (all but a clique) over the classes that clique's looks tell apart. */
export function classSums(layout: Layout, factor: Factor, classes: Classes): ClassSums {
  const { cutsetStates, cells, cellCount, scenarios, periodCellCount } = layout;
  const values = noughts(cutsetStates.length * classes.size);
  for (let m = 0; m < cutsetStates.length; m++) {
    for (let c = 0; c < scenarios.length; c++) {
      const { first, count, offset } = cells[c] as ScenarioCells;
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
