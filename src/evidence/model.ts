import type { Alteration } from '../knowledge/schema.ts';
import { type CauseShares, causeShares } from './causeShares.ts';
import type { Classes } from './columnClasses.ts';
import { type Draw, figureRange } from './figures.ts';
import { type Column, habitStateShare } from './partTable.ts';
import type { Look, ModelPart, PreparedCase } from './prepareCase.ts';

import { inGroups, looksLikelihood, shareIn } from './signShares.ts';
import { shopPriors, worldPriors, worlds, yearPriors } from './worlds.ts';

/**
 * Parts that must be summed together, given the making, the year, the shop and the make-up alterations: those that one
 * timed alteration can have changed, or one part by itself, or one alteration that changes no part.
 */
export type Unit = { parts: readonly ModelPart[]; alterations: readonly Alteration[] };

/** One state of all make-up alterations: which of them happened. */
export type Config = { happened: readonly boolean[] };

/**
 * Where a column's cells lie. Only bins in which a piece of that world and shop can have been made have a cell:
 * bins first … first + count − 1, at offset … offset + count − 1 within each config's block.
 */
export type ColumnCells = { first: number; count: number; offset: number };

/** The layout of the model for one case; the same for every redraw of its figures. */
export type Layout = {
  prepared: PreparedCase;
  columns: readonly Column[];
  /** The first so many columns are period work. */
  periodColumns: number;
  /** Signs of the maker's habit looked for on several parts. */
  habits: readonly string[];
  cells: readonly ColumnCells[];
  /** Cells of one config, and of its period columns. */
  cellCount: number;
  periodCellCount: number;
  /** By world: the bins in which it can have been made. */
  worldBins: readonly { first: number; count: number }[];
  units: readonly Unit[];
  /** Alterations that bring in parts of other old pieces: they are conditioned on, all states side by side. */
  makeUps: readonly Alteration[];
  configs: readonly Config[];
  shares: CauseShares;
  /** By alteration and kind of part: the share of such parts that are then not of the making, 0–1. */
  changeShares: Record<string, Record<string, number>>;
  /** Classes of columns already worked out, by what the looks at a unit depend on. */
  classes: Map<string, Classes>;
};

/** The model with its figures fixed: priors over config × column × bin. */
export type Model = {
  layout: Layout;
  draw: Draw;
  prior: Float64Array;
  old: Float64Array;
  worldPrior: readonly number[];
  /** Renewal by bin already worked out, by part. */
  renewed: Map<string, Float64Array>;
};

/** How strict a sum is: all histories · no make-up · no improving either · intact. */
export const strictnesses = ['all', 'not-made-up', 'not-altered', 'intact'] as const;

/** Whether a history with this alteration still counts at a strictness (index into `strictnesses`). */
export function allowedAt(alteration: Alteration, strictness: number): boolean {
  const limit = { upkeep: 3, repair: 2, improve: 1, 'make-up': 0 }[alteration.class];
  return strictness <= limit;
}

/** At most so many habits are drawn once for the piece; each doubles the cells. */
const mostHabits = 5;

/**
 * Lays out columns, configs and units for a prepared case.
 *
 * @param allShops  whether shops of which no habit was looked for have columns of their own. They differ from "unlisted"
 *   in nothing that was seen, so only what is yet to be seen needs them.
 */
export function layOut(prepared: PreparedCase, allShops = false): Layout {
  const habits = sharedHabits(prepared.looks);
  const heard = prepared.shops.map((shop) =>
    shop.habits.some((habit) =>
      prepared.looks.some((look) => look.sign.id === habit.sign && look.sign.hangsOn === 'making'),
    ),
  );
  const columns: Column[] = [];
  worlds.forEach((world, index) => {
    const shops =
      world.making === 'period'
        ? prepared.shops.flatMap((_, s) => (allShops || heard[s] === true ? [s + 1] : []))
        : [];
    for (const shop of [0, ...shops]) {
      for (let state = 0; state < 2 ** habits.length; state++)
        columns.push({ world: index, shop, habits: state });
    }
  });
  const changed = (alteration: Alteration) =>
    prepared.parts.filter((part) => alteration.changes[part.kind] !== undefined);
  const makeUps = prepared.alterations.filter((each) =>
    changed(each).some((part) => each.changes[part.kind]?.to === 'other-old'),
  );
  const others = prepared.alterations.filter((each) => !makeUps.includes(each));
  const configs = Array.from({ length: 2 ** makeUps.length }, (_, bits) => ({
    happened: makeUps.map((_, index) => ((bits >> index) & 1) === 1),
  }));
  const periodColumns = columns.filter((column) => worlds[column.world]?.making === 'period').length;
  const { cells, worldBins } = cellsOf(prepared, columns);
  const end = (column: number) => cells[column]?.offset ?? cells.reduce((sum, each) => sum + each.count, 0);
  return {
    prepared,
    columns,
    periodColumns,
    habits,
    cells,
    cellCount: end(columns.length),
    periodCellCount: end(periodColumns),
    worldBins,
    units: unitsOf(prepared.parts, others, changed),
    makeUps,
    configs,
    shares: causeShares(prepared),
    changeShares: changeShares(prepared.alterations),
    classes: new Map(),
  };
}

function changeShares(alterations: readonly Alteration[]): Record<string, Record<string, number>> {
  return Object.fromEntries(
    alterations.map((alteration) => [
      alteration.id,
      Object.fromEntries(
        Object.entries(alteration.changes).map(([kind, change]) => [kind, figureRange(change).best]),
      ),
    ]),
  );
}

/** Signs of the maker's habit on more than one part, those on most parts first. */
function sharedHabits(looks: readonly Look[]): string[] {
  const counts = new Map<string, number>();
  for (const look of looks)
    if (look.sign.hangsOn === 'making') counts.set(look.sign.id, (counts.get(look.sign.id) ?? 0) + 1);
  return [...counts]
    .filter(([, count]) => count > 1)
    .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
    .slice(0, mostHabits)
    .map(([id]) => id);
}

/** The cells of every column: the bins where its world's years and its shop's years both have any share. */
function cellsOf(prepared: PreparedCase, columns: readonly Column[]) {
  const years = yearPriors(prepared);
  const shops = shopPriors(prepared, () => 0.01);
  const worldBins = worlds.map((world) => liveBins(years[world.making]));
  let offset = 0;
  const cells = columns.map((column) => {
    const line = years[worlds[column.world]?.making ?? 'period'];
    const shop = column.shop === 0 ? undefined : shops[column.shop];
    const { first, count } = liveBins(
      shop === undefined ? line : line.map((each, bin) => each * (shop[bin] ?? 0)),
    );
    const each = { first, count, offset };
    offset += count;
    return each;
  });
  return { cells, worldBins };
}

function liveBins(line: Float64Array): { first: number; count: number } {
  const first = line.findIndex((each) => each > 0);
  const last = line.findLastIndex((each) => each > 0);
  return first < 0 ? { first: 0, count: 0 } : { first, count: last - first + 1 };
}

/** Alterations that share a part stand in one unit, with all the parts they can change; every other part stands alone. */
function unitsOf(
  parts: readonly ModelPart[],
  alterations: readonly Alteration[],
  changed: (each: Alteration) => ModelPart[],
): Unit[] {
  const units: { parts: Set<ModelPart>; alterations: Alteration[] }[] = [];
  for (const alteration of alterations) {
    const mine = changed(alteration);
    const joined = units.filter((unit) => mine.some((part) => unit.parts.has(part)));
    const rest = units.filter((unit) => !joined.includes(unit));
    const all = new Set([...joined.flatMap((unit) => [...unit.parts]), ...mine]);
    units.splice(0, units.length, ...rest, {
      parts: all,
      alterations: [...joined.flatMap((unit) => unit.alterations), alteration],
    });
  }
  const taken = new Set(units.flatMap((unit) => [...unit.parts]));
  return [
    ...units.map((unit) => ({ parts: [...unit.parts], alterations: unit.alterations })),
    ...parts.filter((part) => !taken.has(part)).map((part) => ({ parts: [part], alterations: [] })),
  ];
}

/**
 * Fixes the figures. The prior of a cell is that of its world, year, shop and make-up state, times what the looks that
 * hang on the make-up alterations say.
 */
export function fixModel(layout: Layout, draw: Draw, looks: readonly Look[] = layout.prepared.looks): Model {
  const { prepared, columns, configs, makeUps, cells, cellCount } = layout;
  const worldPrior = worldPriors(prepared, draw);
  const years = yearPriors(prepared);
  const shops = shopPriors(prepared, draw);
  const columnShops = new Set(columns.map((column) => column.shop));
  const prior = new Float64Array(configs.length * cellCount);
  // Shops without columns of their own stand with the unlisted.
  const unlisted = (shops[0] as Float64Array).map((each, bin) =>
    shops.reduce((sum, line, s) => (columnShops.has(s) ? sum : sum + (line[bin] ?? 0)), each),
  );
  const habitShares = columns.map((column) =>
    habitStateShare(column, { prepared, draw, habits: layout.habits }),
  );
  configs.forEach((config, m) => {
    const ofConfig = [true, false].map((period) =>
      makeUps.reduce((scale, alteration, a) => {
        const happened = config.happened[a] === true;
        return (
          scale *
          alterationShare(alteration, period, happened, draw) *
          alterationLikelihood(alteration, happened, looks, prepared, draw)
        );
      }, 1),
    );
    columns.forEach((column, c) => {
      const making = worlds[column.world]?.making ?? 'period';
      const scale =
        (worldPrior[column.world] ?? 0) *
        (ofConfig[making === 'period' ? 0 : 1] ?? 0) *
        (habitShares[c] ?? 0);
      const { first, count, offset } = cells[c] as ColumnCells;
      const at = m * cellCount + offset;
      const line = column.shop === 0 ? unlisted : shops[column.shop];
      for (let i = 0; i < count; i++) {
        const shop = making === 'period' ? (line?.[first + i] ?? 0) : 1;
        prior[at + i] = scale * (years[making][first + i] ?? 0) * shop;
      }
    });
  });
  return { layout, draw, prior, old: years.period, worldPrior, renewed: new Map() };
}

/** How probable it is that an alteration happened (or did not) to a period piece, or to a later one. */
export function alterationShare(
  alteration: Alteration,
  period: boolean,
  happened: boolean,
  draw: Draw,
): number {
  const share = draw(period ? alteration.happened.period : alteration.happened.later);
  return happened ? share : 1 - share;
}

/** How probable the looks that hang on an alteration are, if it happened or did not. */
export function alterationLikelihood(
  alteration: Alteration,
  happened: boolean,
  looks: readonly Look[],
  prepared: PreparedCase,
  draw: Draw,
): number {
  const mine = looks.filter((look) => look.sign.hangsOn === `alteration/${alteration.id}`);
  if (mine.length === 0) return 1;
  const state = happened ? 'happened' : 'not';
  return looksLikelihood(inGroups(mine), prepared.knowledge.making, draw, (look) =>
    shareIn(look.sign, state, draw),
  );
}
