import { changedLine, eachChange, yearMean } from './changedParts.ts';
import { type Evaluation, restOf } from './masses.ts';
import type { ColumnCells, Unit } from './model.ts';
import { type ModelPart, nowBin } from './prepareCase.ts';
import { unchangedLine } from './readyPart.ts';
import { columnKey, readySum, type Summing } from './unitFactor.ts';
import { binOf } from './yearAxis.ts';

/**
 * For a part that a timed alteration changed: the mass of every year that may have happened in, on the scale of the
 * whole product. The other parts changed with it bear on the year too.
 *
 * Each way the alteration can have fallen weighs every year by what its changed parts say of that year; the mass of the
 * making's years up to it, each spread over the years since, comes before.
 */
export function yearsOfChange(
  evaluation: Evaluation,
  unitIndex: number,
  part: ModelPart,
  alterationId: string,
): Float64Array {
  const { model, looks } = evaluation;
  const unit = model.layout.units[unitIndex] as Unit;
  const index = unit.alterations.findIndex((each) => each.id === alterationId);
  const earliestYear = unit.alterations[index]?.earliest;
  const { axis } = model.layout.prepared;
  const earliest = earliestYear === undefined ? 0 : binOf(axis, earliestYear);
  const summing = readySum(model, unit, looks, { part: { id: part.id, source: alterationId } });
  const byChange = massesByChange(evaluation, unitIndex, summing, index);
  const log = summing.parts.reduce((sum, each) => sum + each.log, 0) + restOf(evaluation, unitIndex).log;
  const scale = Math.exp(log - evaluation.whole.log);
  const now = nowBin(model.layout.prepared);
  const years = new Float64Array(axis.bins);
  for (const [changed, masses] of byChange) {
    const line = changedLine(summing, index, changed);
    let before = 0;
    for (let bin = 0; bin <= now; bin++) {
      before += (masses[bin] as number) / (now - Math.max(bin, Math.min(earliest, now)) + 1);
      if (bin >= earliest) years[bin] = (years[bin] as number) + before * (line[bin] as number) * scale;
    }
  }
  return years;
}

/** For every set of parts the alteration can have changed: the mass by bin of the making, its own year not yet summed. */
function massesByChange(
  evaluation: Evaluation,
  unitIndex: number,
  summing: Summing,
  index: number,
): Map<number, Float64Array> {
  const { layout } = evaluation.model;
  const byChange = new Map<number, Float64Array>();
  layout.configs.forEach((_, m) => {
    for (const [c, rest] of restByColumn(evaluation, unitIndex, summing, m)) {
      const bins = layout.worldBins[layout.columns[c]?.world ?? 0] ?? { first: 0, count: 0 };
      const lines = summing.parts.map((ready) => unchangedLine(evaluation.model, ready, c, m, false));
      for (const state of summing.states.filter((each) => each.happened.includes(index))) {
        const weight = c < layout.periodColumns ? state.period : state.later;
        eachChange(summing, lines, state.happened, bins.count, ({ changed, product, scale }) => {
          const mask = changed[index] as number;
          const masses = byChange.get(mask) ?? new Float64Array(layout.prepared.axis.bins);
          byChange.set(mask, masses);
          const others = state.happened.flatMap((a) =>
            a === index ? [] : (yearMean(summing, a, changed[a] as number) ?? []),
          );
          for (let i = 0; i < bins.count; i++) {
            let value = (product[i] as number) * scale * weight * (rest[i] as number);
            for (const other of others) value *= other[bins.first + i] as number;
            masses[bins.first + i] = (masses[bins.first + i] as number) + value;
          }
        });
      }
    }
  });
  return byChange;
}

/** The product of all else, summed over columns alike to this unit: by the first such column, over its world's bins. */
function restByColumn(
  evaluation: Evaluation,
  unitIndex: number,
  summing: Summing,
  m: number,
): Map<number, Float64Array> {
  const { layout } = evaluation.model;
  const all = restOf(evaluation, unitIndex).sums[0] as Float64Array;
  const firstOf = new Map<string, number>();
  const byColumn = new Map<number, Float64Array>();
  layout.columns.forEach((column, c) => {
    const key = columnKey(summing, c);
    const like = firstOf.get(key) ?? c;
    firstOf.set(key, like);
    const world = layout.worldBins[column.world] ?? { first: 0, count: 0 };
    const sum = byColumn.get(like) ?? new Float64Array(world.count);
    byColumn.set(like, sum);
    const { first, count, offset } = layout.cells[c] as ColumnCells;
    const skip = first - world.first;
    for (let i = 0; i < count; i++)
      sum[skip + i] = (sum[skip + i] as number) + (all[m * layout.cellCount + offset + i] as number);
  });
  return byColumn;
}
