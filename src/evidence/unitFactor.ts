import type { Alteration } from '../knowledge/schema.ts';
import { type Changing, sumOverChanges } from './changedParts.ts';
import {
  allowedAt,
  alterationLikelihood,
  alterationShare,
  type ColumnCells,
  type Model,
  strictnesses,
  type Unit,
} from './model.ts';
import type { Look } from './prepareCase.ts';
import { type OnlyPart, readyPart, unchangedLine } from './readyPart.ts';
import { worlds } from './worlds.ts';

/**
 * What a unit's looks say of every cell, its own unknowns summed out. `sums[0]` holds config × cell; the stricter sums
 * hold config × period cell, zero where the config itself is not allowed. True values are the held ones times e^log.
 */
export type Factor = { sums: Float64Array[]; log: number };

/** Restricts a unit's sum to one history: an alteration that did or did not happen, or one part's source. */
export type Only = { alteration?: { id: string; happened: boolean }; part?: OnlyPart };

/** One state of a unit's alterations, and how probable it is with its looks in a period piece and in a later one. */
export type State = { happened: number[]; period: number; later: number };

/** What stays the same over all columns and configs of one unit's sum. */
export type Summing = Changing & { states: readonly State[] };

/**
 * Sums a unit exactly over its parts' origins and years and its alterations' states and years.
 *
 * Parts changed by one alteration share its year. The sum over that year is taken once for every set of parts the
 * alteration may have changed, so a cell costs one pass over those sets instead of one over the years.
 *
 * @param looks  all looks to count; those that are not of this unit are passed over
 */
export function unitFactor(model: Model, unit: Unit, looks: readonly Look[], only: Only = {}): Factor {
  const { columns, configs, cells, cellCount, periodColumns, periodCellCount, worldBins } = model.layout;
  const sums = strictnesses.map(
    (_, k) => new Float64Array(configs.length * (k === 0 ? cellCount : periodCellCount)),
  );
  const summing = readySum(model, unit, looks, only);
  const keys = columns.map((_, c) => columnKey(summing, c));
  for (let m = 0; m < configs.length; m++) {
    const known = new Map<string, Float64Array[]>();
    columns.forEach((column, c) => {
      const key = keys[c] as string;
      const lines = known.get(key) ?? columnLines(summing, c, m);
      known.set(key, lines);
      const { first, count, offset } = cells[c] as ColumnCells;
      const skip = first - (worldBins[column.world]?.first ?? 0);
      lines.forEach((line, k) => {
        if (k > 0 && c >= periodColumns) return;
        const at = m * (k === 0 ? cellCount : periodCellCount) + offset;
        (sums[k] as Float64Array).set(line.subarray(skip, skip + count), at);
      });
    });
  }
  return scaled({ sums, log: summing.parts.reduce((sum, part) => sum + part.log, 0) });
}

/** Makes a unit ready to be summed: its parts' tables and its alterations' states. */
export function readySum(model: Model, unit: Unit, looks: readonly Look[], only: Only = {}): Summing {
  return {
    model,
    parts: unit.parts.map((part) => readyPart(model, part, looks, only.part)),
    alterations: unit.alterations,
    means: unit.alterations.map(() => new Map<number, Float64Array>()),
    states: alterationStates(model, unit, looks, only),
  };
}

/** Columns alike in everything this unit depends on share one computation: what they are alike in. */
export function columnKey({ model, parts }: Summing, c: number): string {
  const world = worlds[model.layout.columns[c]?.world ?? 0] ?? worlds[0];
  const asks = (cause: 'tooling' | 'ageing' | 'use') =>
    parts.some((part) => part.asks[cause]) ? world?.[cause] : '';
  const habits = parts.map((part) => part.table.ownMaking[c]).join(' ');
  return `${world?.making} ${asks('tooling')} ${asks('ageing')} ${asks('use')} ${habits}`;
}

/** The unit's sums of one column and config, at every strictness, over the bins of the column's world. */
function columnLines(summing: Summing, c: number, m: number): Float64Array[] {
  const { model, parts, alterations, states } = summing;
  const { layout } = model;
  const bins = layout.worldBins[layout.columns[c]?.world ?? 0] ?? { first: 0, count: 0 };
  const period = c < layout.periodColumns;
  const config = layout.configs[m];
  const configAllows = (k: number) =>
    layout.makeUps.every((each, a) => config?.happened[a] !== true || allowedAt(each, k));
  const lines = Array.from({ length: period ? 4 : 1 }, () => new Float64Array(bins.count));
  const any = parts.map((part) => unchangedLine(model, part, c, m, false));
  const strict = period
    ? parts.map((ready, i) => (ready.part.structural ? unchangedLine(model, ready, c, m, true) : any[i]))
    : [];
  for (const state of states) {
    const weight = period ? state.period : state.later;
    if (weight === 0) continue;
    const line = sumOverChanges(summing, any, state.happened, bins);
    addTo(lines[0], line, weight);
    if (!period) continue;
    const allowed = (k: number) =>
      configAllows(k) && state.happened.every((a) => allowedAt(alterations[a] as Alteration, k));
    for (let k = 1; k < 3; k++) if (allowed(k)) addTo(lines[k], line, weight);
    if (allowed(3)) {
      addTo(lines[3], sumOverChanges(summing, strict as Float64Array[], state.happened, bins), weight);
    }
  }
  return lines;
}

/** All states of the unit's alterations, or those a restriction allows. */
function alterationStates(model: Model, { alterations }: Unit, looks: readonly Look[], only: Only): State[] {
  const ways = alterations.map((alteration) =>
    [false, true].map((happened) => {
      const seen = alterationLikelihood(alteration, happened, looks, model.layout.prepared, model.draw);
      return {
        period: alterationShare(alteration, true, happened, model.draw) * seen,
        later: alterationShare(alteration, false, happened, model.draw) * seen,
      };
    }),
  );
  return Array.from({ length: 2 ** alterations.length }, (_, bits) => {
    const happened = alterations.flatMap((_, a) => (((bits >> a) & 1) === 1 ? [a] : []));
    const weight = (kind: 'period' | 'later') =>
      ways.reduce((product, way, a) => product * (way[happened.includes(a) ? 1 : 0]?.[kind] ?? 1), 1);
    return { happened, period: weight('period'), later: weight('later') };
  }).filter((state) =>
    alterations.every(
      (each, a) => each.id !== only.alteration?.id || state.happened.includes(a) === only.alteration.happened,
    ),
  );
}

function addTo(sum: Float64Array | undefined, line: Float64Array, weight: number): void {
  if (sum === undefined) return;
  for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + weight * (line[i] as number);
}

/** Holds a factor, in place, so that its largest value is 1. */
export function scaled(factor: Factor): Factor {
  let max = 0;
  const all = factor.sums[0] as Float64Array;
  for (let i = 0; i < all.length; i++) if ((all[i] as number) > max) max = all[i] as number;
  if (!(max > 0) || max === 1) return factor;
  for (const sum of factor.sums) for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) / max;
  return { sums: factor.sums, log: factor.log + Math.log(max) };
}
