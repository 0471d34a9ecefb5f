import { changedLine, eachChange, yearMean } from './changedParts.ts';
import type { ClassSums } from './classSums.ts';
import { type Classes, columnClasses } from './columnClasses.ts';
import { type Evaluation, restSumsOf } from './masses.ts';
import type { Model, Unit } from './model.ts';
import { type ModelPart, nowBin } from './prepareCase.ts';
import { fillUnchanged } from './readyPart.ts';
import { lineAt, readySum, type Summing } from './unitLines.ts';
import { worlds } from './worlds.ts';
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
  const classes = columnClasses(model.layout, unit, looks);
  const rest = restSumsOf(evaluation, unitIndex, classes);
  const summing = readySum(model, unit, classes, looks, { part: { id: part.id, source: alterationId } });
  const byChange = massesByChange(model, classes, rest, summing, index);
  const log = summing.parts.reduce((sum, each) => sum + each.log, 0) + rest.log;
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
  model: Model,
  classes: Classes,
  rest: ClassSums,
  summing: Summing,
  index: number,
): Map<number, Float64Array> {
  const { layout } = model;
  const byChange = new Map<number, Float64Array>();
  layout.configs.forEach((_, m) => {
    classes.columns.forEach((column, i) => {
      const bins = layout.worldBins[column.world] ?? { first: 0, count: 0 };
      const at = lineAt(layout, classes, m, i, 0);
      summing.parts.forEach((ready, p) => {
        fillUnchanged(summing.unchanged[p] as Float64Array, model, ready, column.world, i, m, false);
      });
      for (const state of summing.states.filter((each) => each.happened.includes(index))) {
        const weight = worlds[column.world]?.making === 'period' ? state.period : state.later;
        eachChange(summing, summing.unchanged, state.happened, bins.count, ({ changed, product, scale }) => {
          const mask = changed[index] as number;
          const masses = byChange.get(mask) ?? new Float64Array(layout.prepared.axis.bins);
          byChange.set(mask, masses);
          const others = state.happened.flatMap((a) =>
            a === index ? [] : (yearMean(summing, a, changed[a] as number) ?? []),
          );
          for (let b = 0; b < bins.count; b++) {
            let value = (product[b] as number) * scale * weight * (rest.values[at + b] as number);
            for (const other of others) value *= other[bins.first + b] as number;
            masses[bins.first + b] = (masses[bins.first + b] as number) + value;
          }
        });
      }
    });
  });
  return byChange;
}
