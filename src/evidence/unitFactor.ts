import type { Alteration } from '../knowledge/schema.ts';
import {
  type ColumnCells,
  allowedAt,
  alterationLikelihood,
  alterationShare,
  type Model,
  strictnesses,
  type Unit,
} from './model.ts';
import {
  changeShare,
  meanFrom,
  type OrdinarySource,
  ordinaryLine,
  renewedByBin,
  reusedIn,
} from './ordinaryTerms.ts';
import { type PartTable, partTable } from './partTable.ts';
import type { Look, ModelPart } from './prepareCase.ts';
import { binOf } from './yearAxis.ts';

/**
 * What a unit's looks say of every cell, its own unknowns summed out. `sums[0]` holds config × cell; the stricter sums
 * hold config × period cell, zero where the config itself is not allowed. True values are the
 * held ones times e^log.
 */
export type Factor = { sums: Float64Array[]; log: number };

/** Restricts a unit's sum to one history: an alteration that did or did not happen, or one part's source. */
export type Only = {
  alteration?: { id: string; happened: boolean };
  part?: { id: string; source: OrdinarySource | string; bin?: number };
};

const allSources: readonly OrdinarySource[] = ['own', 'renewed', 'reused'];

/**
 * Sums a unit exactly over its parts' origins and years and its alterations' states and years.
 *
 * Parts changed by one alteration share its year. The sum over that year is taken once for every set of parts the
 * alteration may have changed, so a cell costs one pass over those sets instead of one over the years.
 *
 * @param looks  all looks to count; those that are not of this unit are passed over
 */
export function unitFactor(model: Model, unit: Unit, looks: readonly Look[], only: Only = {}): Factor {
  const { layout } = model;
  const { columns, configs, cells, cellCount, periodColumns, periodCellCount } = layout;
  const sums = strictnesses.map(
    (_, k) => new Float64Array(configs.length * (k === 0 ? cellCount : periodCellCount)),
  );
  const parts = unit.parts.map((part) => preparePart(model, part, looks, only));
  const states = alterationStates(unit.alterations, only);
  const means = new Map<string, Float64Array>();
  configs.forEach((_, m) => {
    const known = new Map<string, Float64Array[]>();
    columns.forEach((column, c) => {
      const key = `${column.world} ${parts.map((part) => part.table.ownMaking[c]).join(' ')}`;
      const lines = known.get(key) ?? columnLines(model, unit, parts, states, c, m, looks, means);
      known.set(key, lines);
      const { first, count, offset } = cells[c] as ColumnCells;
      const skip = first - (layout.worldBins[column.world]?.first ?? 0);
      lines.forEach((line, k) => {
        if (k > 0 && c >= periodColumns) return;
        const at = m * (k === 0 ? cellCount : periodCellCount) + offset;
        (sums[k] as Float64Array).set(line.subarray(skip, skip + count), at);
      });
    });
  });
  return scaled({ sums, log: parts.reduce((sum, part) => sum + part.log, 0) });
}

/** The unit's sums of one column and config, at every strictness, over the bins of the column's world. */
function columnLines(
  model: Model,
  unit: Unit,
  parts: readonly ReadyPart[],
  states: readonly (readonly boolean[])[],
  c: number,
  m: number,
  looks: readonly Look[],
  means: Map<string, Float64Array>,
): Float64Array[] {
  const { layout } = model;
  const world = layout.columns[c]?.world ?? 0;
  const bins = layout.worldBins[world] ?? { first: 0, count: 0 };
  const period = c < layout.periodColumns;
  const config = layout.configs[m];
  const configAllows = (k: number) =>
    layout.makeUps.every((each, a) => config?.happened[a] !== true || allowedAt(each, k));
  const lines = Array.from({ length: period ? 4 : 1 }, () => new Float64Array(bins.count));
  const any = parts.map((part) => partLine(model, part, c, m, false));
  for (const state of states) {
    const weight = stateWeight(model, unit, state, period, looks);
    if (weight === 0) continue;
    const happened = unit.alterations.filter((_, a) => state[a] === true);
    const line = summedLine(model, parts, any, happened, means, bins);
    addTo(lines[0], line, weight);
    if (!period) continue;
    const allowed = (k: number) => configAllows(k) && happened.every((each) => allowedAt(each, k));
    for (let k = 1; k < 3; k++) if (allowed(k)) addTo(lines[k], line, weight);
    if (allowed(3)) {
      const intact = parts.map((part, i) =>
        part.part.structural ? partLine(model, part, c, m, true) : (any[i] as Float64Array),
      );
      addTo(lines[3], summedLine(model, parts, intact, happened, means, bins), weight);
    }
  }
  return lines;
}

/** A part made ready: its table scaled to at most 1, its renewal by year, and what may be chosen for it. */
type ReadyPart = {
  part: ModelPart;
  table: PartTable;
  looked: boolean;
  log: number;
  renewed: Float64Array;
  renewedMean: Float64Array;
  sources: readonly OrdinarySource[];
  /** The one alteration it must have been changed by, if the sum is restricted so. */
  byAlteration: string | undefined;
  restricted: boolean;
};

function preparePart(model: Model, part: ModelPart, looks: readonly Look[], only: Only): ReadyPart {
  const { layout, draw, old } = model;
  const mine = looks.filter((look) => look.part === part.id && !look.sign.hangsOn.startsWith('alteration/'));
  const table = partTable(part, mine, {
    prepared: layout.prepared,
    draw,
    shares: layout.shares,
    columns: layout.columns,
    old,
  });
  const log = scaleTable(table);
  if (only.part?.id === part.id && only.part.bin !== undefined) onlyAt(table, only.part.bin);
  const restriction = only.part?.id === part.id ? only.part.source : undefined;
  const ordinary = allSources.find((source) => source === restriction);
  return {
    part,
    table,
    looked: mine.length > 0,
    log,
    renewed: renewedByBin(model, part),
    renewedMean: meanFrom(model, table.repair),
    sources: restriction === undefined ? allSources : ordinary === undefined ? [] : [ordinary],
    byAlteration: restriction !== undefined && ordinary === undefined ? restriction : undefined,
    restricted: restriction !== undefined,
  };
}

/** Leaves of a part put in later only the one year. */
function onlyAt(table: PartTable, bin: number): void {
  for (const line of [table.repair, table.improve])
    for (let i = 0; i < line.length; i++) if (i !== bin) line[i] = 0;
}

function scaleTable(table: PartTable): number {
  const habitMax = Math.max(...table.ownMaking);
  let max = table.old;
  for (const line of [table.repair, table.improve]) for (const each of line) max = Math.max(max, each);
  for (const line of table.own) for (const each of line) max = Math.max(max, each * habitMax);
  if (!(max > 0) || max === 1) return 0;
  for (const line of table.own) for (let i = 0; i < line.length; i++) line[i] = (line[i] ?? 0) / max;
  for (const line of [table.repair, table.improve])
    for (let i = 0; i < line.length; i++) line[i] = (line[i] ?? 0) / max;
  table.old /= max;
  return Math.log(max);
}

/** The part's factor, over its world's bins, when no timed alteration changed it; make-up ones of this config may have. */
function partLine(
  model: Model,
  ready: ReadyPart,
  columnIndex: number,
  configIndex: number,
  intact: boolean,
): Float64Array {
  const { layout } = model;
  const column = layout.columns[columnIndex] ?? { world: 0, shop: 0 };
  const bins = layout.worldBins[column.world] ?? { first: 0, count: 0 };
  const sources = intact ? ready.sources.filter((source) => source === 'own') : ready.sources;
  const reused = reusedIn(model, ready.part, column.world);
  const line = ordinaryLine(ready, column, columnIndex, reused, sources, bins);
  layout.makeUps.forEach((alteration, a) => {
    const change = alteration.changes[ready.part.kind];
    if (change === undefined || layout.configs[configIndex]?.happened[a] !== true) return;
    const share = changeShare(change.in100);
    const brought = ready.byAlteration === alteration.id || !ready.restricted ? share : 0;
    const later =
      change.to === 'other-old'
        ? undefined
        : meanFrom(model, change.to === 'repair' ? ready.table.repair : ready.table.improve);
    for (let i = 0; i < line.length; i++) {
      line[i] = (1 - share) * (line[i] as number) + brought * (later?.[bins.first + i] ?? ready.table.old);
    }
  });
  return line;
}

/** All states of the unit's alterations, those only allowed by a restriction. */
function alterationStates(alterations: readonly Alteration[], only: Only): boolean[][] {
  const states = Array.from({ length: 2 ** alterations.length }, (_, bits) =>
    alterations.map((_, a) => ((bits >> a) & 1) === 1),
  );
  const { alteration } = only;
  if (alteration === undefined) return states;
  return states.filter((state) =>
    alterations.every((each, a) => each.id !== alteration.id || state[a] === alteration.happened),
  );
}

function stateWeight(
  model: Model,
  unit: Unit,
  state: readonly boolean[],
  period: boolean,
  looks: readonly Look[],
): number {
  return unit.alterations.reduce((weight, alteration, a) => {
    const happened = state[a] === true;
    const share = alterationShare(alteration, period, happened, model.draw);
    return share === 0
      ? 0
      : weight * share * alterationLikelihood(alteration, happened, looks, model.layout.prepared, model.draw);
  }, 1);
}

/** Sums, over the given bins of the making, over which happened alteration changed which part and over their years. */
function summedLine(
  model: Model,
  parts: readonly ReadyPart[],
  lines: readonly Float64Array[],
  happened: readonly Alteration[],
  means: Map<string, Float64Array>,
  bins: { first: number; count: number },
): Float64Array {
  const total = new Float64Array(bins.count);
  const changedBy = happened.map(() => [] as number[]);
  const go = (index: number, product: Float64Array) => {
    const ready = parts[index];
    const line = lines[index];
    if (ready === undefined || line === undefined) {
      let value = product;
      happened.forEach((alteration, a) => {
        const mean = yearMean(model, alteration, changedBy[a] as number[], parts, means);
        if (mean !== undefined) value = timesLine(value, mean, 1, bins.first);
      });
      addTo(total, value, 1);
      return;
    }
    let left = 1;
    happened.forEach((alteration, a) => {
      const change = alteration.changes[ready.part.kind];
      if (change === undefined) return;
      const share = changeShare(change.in100);
      const may = !ready.restricted || ready.byAlteration === alteration.id;
      // A part without looks that may be anything: both ways say the same of it, so it need not branch.
      if (may && (ready.looked || ready.restricted)) {
        changedBy[a]?.push(index);
        go(index + 1, timesScalar(product, left * share));
        changedBy[a]?.pop();
        left *= 1 - share;
      } else if (!may) left *= 1 - share;
    });
    go(index + 1, timesLine(product, line, left, 0));
  };
  go(0, new Float64Array(bins.count).fill(1));
  return total;
}

/** The mean, over the alteration's possible years from each bin on, of what the looks at the parts it changed say. */
function yearMean(
  model: Model,
  alteration: Alteration,
  changed: readonly number[],
  parts: readonly ReadyPart[],
  means: Map<string, Float64Array>,
) {
  if (changed.length === 0) return undefined;
  const key = `${alteration.id} ${changed.join(' ')}`;
  const known = means.get(key);
  if (known !== undefined) return known;
  const { axis } = model.layout.prepared;
  const product = new Float64Array(axis.bins).fill(1);
  for (const index of changed) {
    const ready = parts[index];
    const to = ready === undefined ? undefined : alteration.changes[ready.part.kind]?.to;
    const line = to === 'improve' ? ready?.table.improve : ready?.table.repair;
    for (let bin = 0; bin < axis.bins; bin++) product[bin] = (product[bin] ?? 0) * (line?.[bin] ?? 0);
  }
  const mean = meanFrom(
    model,
    product,
    alteration.earliest === undefined ? 0 : binOf(axis, alteration.earliest),
  );
  means.set(key, mean);
  return mean;
}

function timesScalar(line: Float64Array, by: number): Float64Array {
  const product = new Float64Array(line.length);
  for (let i = 0; i < line.length; i++) product[i] = (line[i] as number) * by;
  return product;
}

/** A line times another (read from a bin on) and a scale. */
function timesLine(line: Float64Array, by: Float64Array, scale: number, from: number): Float64Array {
  const product = new Float64Array(line.length);
  for (let i = 0; i < line.length; i++) product[i] = (line[i] as number) * (by[from + i] as number) * scale;
  return product;
}

function addTo(sum: Float64Array | undefined, line: Float64Array, weight: number): void {
  if (sum === undefined) return;
  for (let i = 0; i < line.length; i++) sum[i] = (sum[i] as number) + weight * (line[i] as number);
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
