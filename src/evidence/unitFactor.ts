import type { Alteration } from '../knowledge/schema.ts';
import {
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
import { worlds } from './worlds.ts';
import { binOf } from './yearAxis.ts';

/**
 * What a unit's looks say of every cell, its own unknowns summed out. `sums[0]` holds config × column × bin; the
 * stricter sums hold config × period column × bin, zero where the config itself is not allowed. True values are the
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
  const { columns, configs, periodColumns, prepared } = layout;
  const bins = prepared.axis.bins;
  const cells = configs.length * columns.length * bins;
  const sums = strictnesses.map(
    (_, k) => new Float64Array(k === 0 ? cells : configs.length * periodColumns * bins),
  );
  const parts = unit.parts.map((part) => preparePart(model, part, looks, only));
  const states = alterationStates(unit.alterations, only);
  const representative = representatives(model, parts);
  const means = new Map<string, Float64Array>();

  configs.forEach((config, m) => {
    const configAllows = (k: number) =>
      layout.makeUps.every((each, a) => config.happened[a] !== true || allowedAt(each, k));
    columns.forEach((column, c) => {
      const first = representative[c] ?? c;
      const at = (m * columns.length + c) * bins;
      const strictAt = (m * periodColumns + c) * bins;
      if (first !== c) {
        copyWithin(sums[0], (m * columns.length + first) * bins, at, bins);
        if (c < periodColumns)
          for (let k = 1; k < 4; k++) copyWithin(sums[k], (m * periodColumns + first) * bins, strictAt, bins);
        return;
      }
      const period = worlds[column.world]?.making === 'period';
      const any = parts.map((part) => partLine(model, part, c, m, false));
      for (const state of states) {
        const weight = stateWeight(model, unit, state, period, looks);
        if (weight === 0) continue;
        const line = summedLine(
          model,
          parts,
          any,
          unit.alterations.filter((_, a) => state[a] === true),
          means,
        );
        addTo(sums[0], at, line, weight);
        if (c >= periodColumns) continue;
        const allowed = (k: number) =>
          configAllows(k) && unit.alterations.every((each, a) => state[a] !== true || allowedAt(each, k));
        for (let k = 1; k < 3; k++) if (allowed(k)) addTo(sums[k], strictAt, line, weight);
        if (allowed(3)) {
          const intact = parts.map((part) => partLine(model, part, c, m, true));
          const strict = summedLine(
            model,
            parts,
            intact,
            unit.alterations.filter((_, a) => state[a] === true),
            means,
          );
          addTo(sums[3], strictAt, strict, weight);
        }
      }
    });
  });
  return scaled({ sums, log: parts.reduce((sum, part) => sum + part.log, 0) });
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

/** Columns that differ in nothing this unit depends on share one computation: the index of the first like it. */
function representatives(model: Model, parts: readonly ReadyPart[]): number[] {
  const seen = new Map<string, number>();
  return model.layout.columns.map((column, c) => {
    const key = `${column.world} ${parts.map((part) => part.table.ownMaking[c]).join(' ')}`;
    const first = seen.get(key) ?? c;
    if (first === c) seen.set(key, c);
    return first;
  });
}

/** The part's factor by bin when no timed alteration changed it; make-up alterations of this config may have. */
function partLine(
  model: Model,
  ready: ReadyPart,
  columnIndex: number,
  configIndex: number,
  intact: boolean,
): Float64Array {
  const { layout } = model;
  const column = layout.columns[columnIndex] ?? { world: 0, shop: 0 };
  const sources =
    intact && ready.part.structural ? ready.sources.filter((source) => source === 'own') : ready.sources;
  const reused = reusedIn(model, ready.part, column.world);
  const line = ordinaryLine(
    ready.table,
    column,
    columnIndex,
    ready.renewed,
    ready.renewedMean,
    reused,
    sources,
  );
  layout.makeUps.forEach((alteration, a) => {
    const change = alteration.changes[ready.part.kind];
    if (change === undefined || layout.configs[configIndex]?.happened[a] !== true) return;
    const share = changeShare(change.in100);
    const brought = ready.byAlteration === alteration.id || !ready.restricted ? share : 0;
    const later =
      change.to === 'other-old'
        ? undefined
        : meanFrom(model, change.to === 'repair' ? ready.table.repair : ready.table.improve);
    for (let bin = 0; bin < line.length; bin++) {
      line[bin] = (1 - share) * (line[bin] ?? 0) + brought * (later?.[bin] ?? ready.table.old);
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

/** Sums, by bin of the making, over which happened alteration changed which part and over the alterations' years. */
function summedLine(
  model: Model,
  parts: readonly ReadyPart[],
  lines: readonly Float64Array[],
  happened: readonly Alteration[],
  means: Map<string, Float64Array>,
): Float64Array {
  const bins = model.layout.prepared.axis.bins;
  const total = new Float64Array(bins);
  const changedBy = happened.map(() => [] as number[]);
  const go = (index: number, product: Float64Array) => {
    const ready = parts[index];
    const line = lines[index];
    if (ready === undefined || line === undefined) {
      const factors = happened.map((alteration, a) =>
        yearMean(model, alteration, changedBy[a] ?? [], parts, means),
      );
      for (let bin = 0; bin < bins; bin++) {
        let value = product[bin] ?? 0;
        for (const factor of factors) if (factor !== undefined) value *= factor[bin] ?? 0;
        total[bin] = (total[bin] ?? 0) + value;
      }
      return;
    }
    let left = 1;
    happened.forEach((alteration, a) => {
      const change = alteration.changes[ready.part.kind];
      if (change === undefined) return;
      const share = changeShare(change.in100);
      const may = !ready.restricted || ready.byAlteration === alteration.id;
      if (may && (ready.looked || ready.restricted)) {
        changedBy[a]?.push(index);
        go(index + 1, timesScalar(product, left * share));
        changedBy[a]?.pop();
        left *= 1 - share;
      } else if (!may) left *= 1 - share;
      // A part without looks that may be anything: both ways say the same of it, so it need not branch.
    });
    go(index + 1, timesLine(product, line, left));
  };
  go(0, new Float64Array(bins).fill(1));
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
  return line.map((each) => each * by);
}

function timesLine(line: Float64Array, by: Float64Array, scale: number): Float64Array {
  return line.map((each, bin) => each * (by[bin] ?? 0) * scale);
}

function addTo(sum: Float64Array | undefined, at: number, line: Float64Array, weight: number): void {
  if (sum === undefined) return;
  for (let bin = 0; bin < line.length; bin++)
    sum[at + bin] = (sum[at + bin] ?? 0) + weight * (line[bin] ?? 0);
}

function copyWithin(sum: Float64Array | undefined, from: number, to: number, count: number): void {
  sum?.copyWithin(to, from, from + count);
}

/** The same factor held so that its largest value is 1. */
export function scaled(factor: Factor): Factor {
  let max = 0;
  for (const each of factor.sums[0] ?? []) if (each > max) max = each;
  if (!(max > 0) || max === 1) return factor;
  return { sums: factor.sums.map((sum) => sum.map((each) => each / max)), log: factor.log + Math.log(max) };
}
