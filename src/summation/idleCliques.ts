import type { ModelPart } from '../evidence/preparedCase.ts';
import { type World, worlds } from '../evidence/worlds.ts';
import type { Factor } from './factor.ts';
import { isIdle } from './habitGroups.ts';
import type { Clique, ScenarioCells } from './layout.ts';
import type { Model } from './model.ts';
import { renewedByBin, reusedIn } from './ordinaryTerms.ts';

/** A factor with all idle cliques multiplied in. */
export function withIdle(model: Model, factor: Factor): Factor {
  const parts = model.layout.cliques.flatMap((clique) =>
    isIdle(model.layout, clique) ? clique.parts.filter((part) => part.structural) : [],
  );
  scaleIntact(model, factor, ownShares(model, parts), false);
  return factor;
}

/** Divides an idle clique out of a product again. */
export function withoutIdle(model: Model, whole: Factor, clique: Clique): Factor {
  const rest = { sums: whole.sums.map((sum, k) => (k === 3 ? sum.slice() : sum)), log: whole.log };
  scaleIntact(
    model,
    rest,
    ownShares(
      model,
      clique.parts.filter((part) => part.structural),
    ),
    true,
  );
  return rest;
}

/** By the stock that period work was built of, and bin: how probable it is that all these parts are of the making. */
function ownShares(model: Model, parts: readonly ModelPart[]): Record<World['stock'], Float64Array> {
  const of = (stock: World['stock']) => {
    const line = new Float64Array(model.layout.prepared.axis.bins).fill(1);
    const world = worlds.findIndex((each) => each.making === 'period' && each.stock === stock);
    for (const part of parts) {
      const kept = 1 - reusedIn(model, part, world);
      const renewed = renewedByBin(model, part);
      for (let bin = 0; bin < line.length; bin++)
        line[bin] = (line[bin] as number) * kept * (1 - (renewed[bin] as number));
    }
    return line;
  };
  return { new: of('new'), old: of('old') };
}

/** Multiplies (or divides) the intact sum of a factor by shares of each period cell's bin. */
function scaleIntact(
  model: Model,
  factor: Factor,
  shares: Record<World['stock'], Float64Array>,
  divide: boolean,
): void {
  const { cutsetStates, cells, scenarios, periodScenarios, periodCellCount } = model.layout;
  const intact = factor.sums[3] as Float64Array;
  for (let m = 0; m < cutsetStates.length; m++) {
    for (let c = 0; c < periodScenarios; c++) {
      const { first, count, offset } = cells[c] as ScenarioCells;
      const line = shares[worlds[scenarios[c]?.world ?? 0]?.stock ?? 'new'];
      const at = m * periodCellCount + offset;
      for (let i = 0; i < count; i++) {
        const by = line[first + i] as number;
        intact[at + i] = (intact[at + i] as number) * (divide ? (by > 0 ? 1 / by : 0) : by);
      }
    }
  }
}
