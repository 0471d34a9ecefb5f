import type { CliqueLines } from './cliqueLines.ts';
import type { Classes } from './layout.ts';
import { allowedAt, type Layout, levels, type ScenarioCells } from './layout.ts';
import { noughts } from './memory.ts';
import type { Model } from './model.ts';
import { lineAt } from './scenarioClasses.ts';

/**
 * A value for every cell of the model. `sums[0]` holds cutset state × cell; the stricter sums hold cutset state × period cell, zero
 * where the cutset state itself is not allowed; they may be left out. True values are the held ones times e^log.
 */
export type Factor = { sums: Float64Array[]; log: number };

/** Products are brought back to 1 when their largest value falls below this. */
const smallest = 1e-60;

/** The prior alone. */
export function priorFactor(model: Model): Factor {
  const { cutsetStates, cellCount, periodCellCount, makeUps } = model.layout;
  const sums = levels.map((_, k) =>
    k === 0 ? copyOf(model.prior) : noughts(cutsetStates.length * periodCellCount),
  );
  cutsetStates.forEach((cutsetState, m) => {
    const period = model.prior.subarray(m * cellCount, m * cellCount + periodCellCount);
    for (let k = 1; k < sums.length; k++) {
      if (makeUps.every((each, a) => cutsetState.happened[a] !== true || allowedAt(each, k)))
        sums[k]?.set(period, m * periodCellCount);
    }
  });
  return scaled({ sums, log: 0 });
}

/** A factor times what a clique's looks say, kept within range. */
export function timesClique(layout: Layout, factor: Factor, classes: Classes, clique: CliqueLines): Factor {
  return multiplyClique(layout, { sums: factor.sums.map(copyOf), log: factor.log }, classes, clique);
}

/** The same, in the factor's own place. */
export function multiplyClique(
  layout: Layout,
  factor: Factor,
  classes: Classes,
  clique: CliqueLines,
): Factor {
  const { cutsetStates, cells, cellCount, scenarios, periodScenarios, periodCellCount } = layout;
  let max = 0;
  for (let m = 0; m < cutsetStates.length; m++) {
    for (let c = 0; c < scenarios.length; c++) {
      const { first, count, offset } = cells[c] as ScenarioCells;
      const skip = first - (classes.first[classes.of[c] as number] as number);
      for (let k = 0; k < (c < periodScenarios ? factor.sums.length : 1); k++) {
        const sum = factor.sums[k] as Float64Array;
        const at = m * (k === 0 ? cellCount : periodCellCount) + offset;
        const from = lineAt(classes, clique.cutsetStateOf[m] as number, classes.of[c] as number, k) + skip;
        for (let i = 0; i < count; i++) {
          const value = (sum[at + i] as number) * (clique.values[from + i] as number);
          sum[at + i] = value;
          if (value > max) max = value;
        }
      }
    }
  }
  factor.log += clique.log;
  return max < smallest ? scaled(factor) : factor;
}

/** Two factors multiplied cell by cell, kept within range. */
export function times(a: Factor, b: Factor): Factor {
  const sums = a.sums.map((sum, k) => {
    const other = b.sums[k] as Float64Array;
    const product = noughts(sum.length);
    for (let i = 0; i < product.length; i++) product[i] = (sum[i] as number) * (other[i] as number);
    return product;
  });
  return scaled({ sums, log: a.log + b.log });
}

/** A factor of ones; `strict` false leaves the stricter sums out. */
export function ones(layout: Layout, strict: boolean): Factor {
  const { cutsetStates, cellCount, periodCellCount } = layout;
  const sums = levels
    .slice(0, strict ? undefined : 1)
    .map((_, k) => noughts(cutsetStates.length * (k === 0 ? cellCount : periodCellCount)).fill(1));
  return { sums, log: 0 };
}

/** Holds a factor, in place, so that its largest value is 1. */
function scaled(factor: Factor): Factor {
  let max = 0;
  const all = factor.sums[0] as Float64Array;
  for (let i = 0; i < all.length; i++) if ((all[i] as number) > max) max = all[i] as number;
  if (!(max > 0) || max === 1) return factor;
  const by = 1 / max;
  if (!Number.isFinite(by)) return factor;
  for (const sum of factor.sums) for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) * by;
  return { sums: factor.sums, log: factor.log + Math.log(max) };
}

/** The same numbers in memory of their own. */
export function copyOf(line: Float64Array): Float64Array {
  const copy = noughts(line.length);
  copy.set(line);
  return copy;
}
