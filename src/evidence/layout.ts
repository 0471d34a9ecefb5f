import type { Alteration } from '../knowledge/schema.ts';
import { boundCampaigns } from './campaigns.ts';
import { type CauseShares, causeShares } from './causeShares.ts';
import { figureRange } from './figures.ts';
import { type HabitGroup, habitGroups } from './habitGroups.ts';
import type { Column } from './partContext.ts';
import type { Look, ModelPart, PreparedCase } from './prepareCase.ts';
import type { UnitShape } from './unitShape.ts';
import { type Making, shopPriors, worlds, yearPriors } from './worlds.ts';

/**
 * Parts that must be summed together, given the making, the year, the shop and the make-up alterations: those that one
 * timed alteration can have changed, or one part by itself, or one alteration that changes no part.
 */
export type Unit = { parts: readonly ModelPart[]; alterations: readonly Alteration[] };

/** One state of all make-up alterations and shared campaigns: which of them happened. */
export type Config = { happened: readonly boolean[]; campaigns: readonly boolean[] };

/**
 * Where a column's cells lie. Only bins in which a piece of that world and shop can have been made have a cell:
 * bins first … first + count − 1, at offset … offset + count − 1 within each config's block.
 */
export type ColumnCells = { first: number; count: number; offset: number };

/** A run of bins. */
export type Bins = { first: number; count: number };

/** The layout of the model for one case; the same for every redraw of its figures. */
export type Layout = {
  prepared: PreparedCase;
  /** True where everything that a look still to come could tell apart is told apart. */
  fine: boolean;
  /** The worlds and, for period work, the shops. */
  columns: readonly Column[];
  /** The first so many columns are period work. */
  periodColumns: number;
  /** Signs of the maker's habit looked for on several parts. */
  habits: readonly string[];
  cells: readonly ColumnCells[];
  /** Cells of one config, and of its period columns. */
  cellCount: number;
  periodCellCount: number;
  /** By world: the bins in which it can have been made; and by world and shop, those of that shop within them. */
  worldBins: readonly Bins[];
  shopBins: readonly (readonly Bins[])[];
  /** How probable each bin is for a piece of each making. */
  years: Record<Making, Float64Array>;
  units: readonly Unit[];
  /** Units that something was looked for on, or that can be altered: together where they share a habit. */
  groups: readonly HabitGroup[];
  /** Alterations that bring in parts of other old pieces: they are conditioned on, all states side by side. */
  makeUps: readonly Alteration[];
  /** Campaigns that several parts show: conditioned on likewise. */
  campaigns: readonly string[];
  configs: readonly Config[];
  shares: CauseShares;
  /** By alteration and kind of part: the share of such parts that are then not of the making, 0–1. */
  changeShares: Record<string, Record<string, number>>;
  /** Shapes of units and groups of single idle units already worked out. */
  shapes: Map<string, UnitShape>;
  idleGroups: Map<number, HabitGroup>;
};

/** How strict a sum is: all histories · no make-up · no improving either · intact. */
export const strictnesses = ['all', 'not-made-up', 'not-altered', 'intact'] as const;

/** Whether a history with this alteration still counts at a strictness (index into `strictnesses`). */
export function allowedAt(alteration: Alteration, strictness: number): boolean {
  const limit = { upkeep: 3, repair: 2, improve: 1, 'make-up': 0 }[alteration.class];
  return strictness <= limit;
}

/** The strictest level at which a config still counts. */
export function strictest(layout: Pick<Layout, 'makeUps' | 'configs'>, m: number): number {
  let k = strictnesses.length - 1;
  while (
    k > 0 &&
    layout.makeUps.some((each, a) => layout.configs[m]?.happened[a] === true && !allowedAt(each, k))
  )
    k--;
  return k;
}

/** At most so many habits are drawn once for the piece; each doubles the states of the parts it binds. */
const mostHabits = 5;

/**
 * Lays out columns, configs, units and groups for a prepared case.
 *
 * @param fine  tells every world and shop apart everywhere. Without it shops of which no habit was looked for have no
 *   columns of their own: they differ from "unlisted" in nothing that was seen, so only what is yet to be seen needs them
 */
export function layOut(prepared: PreparedCase, fine = false): Layout {
  const heard = prepared.shops.map((shop) =>
    shop.habits.some((habit) =>
      prepared.looks.some((look) => look.sign.id === habit.sign && look.sign.hangsOn === 'making'),
    ),
  );
  const columns: Column[] = worlds.flatMap((world, index) => {
    const shops =
      world.making === 'period'
        ? prepared.shops.flatMap((_, s) => (fine || heard[s] === true ? [s + 1] : []))
        : [];
    return [0, ...shops].map((shop) => ({ world: index, shop, habits: 0 }));
  });
  const changed = (alteration: Alteration) =>
    prepared.parts.filter((part) => alteration.changes[part.kind] !== undefined);
  const makeUps = prepared.alterations.filter((each) =>
    changed(each).some((part) => each.changes[part.kind]?.to === 'other-old'),
  );
  const others = prepared.alterations.filter((each) => !makeUps.includes(each));
  const campaigns = boundCampaigns(prepared.looks, fine);
  const configs = Array.from({ length: 2 ** (makeUps.length + campaigns.length) }, (_, bits) => ({
    happened: makeUps.map((_, index) => ((bits >> index) & 1) === 1),
    campaigns: campaigns.map((_, index) => ((bits >> (makeUps.length + index)) & 1) === 1),
  }));
  const periodColumns = columns.filter((column) => worlds[column.world]?.making === 'period').length;
  const { cells, worldBins, shopBins, years } = cellsOf(prepared, columns);
  const end = (column: number) => cells[column]?.offset ?? cells.reduce((sum, each) => sum + each.count, 0);
  const units = unitsOf(prepared.parts, others, changed);
  const base = { prepared, fine, columns, shopBins, units, habits: sharedHabits(prepared.looks) };
  return {
    ...base,
    periodColumns,
    worldBins,
    years,
    cells,
    cellCount: end(columns.length),
    periodCellCount: end(periodColumns),
    groups: habitGroups(base),
    makeUps,
    campaigns,
    configs,
    shares: causeShares(prepared),
    changeShares: changeShares(prepared.alterations),
    shapes: new Map(),
    idleGroups: new Map(),
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
  const ofPeriod = shops.map((shop, index) =>
    liveBins(index === 0 ? years.period : years.period.map((each, bin) => each * (shop[bin] as number))),
  );
  // Only period work is of a listed shop.
  const shopBins = worlds.map((world, w) => (world.making === 'period' ? ofPeriod : [worldBins[w] as Bins]));
  let offset = 0;
  const cells = columns.map((column) => {
    const each = { ...(shopBins[column.world]?.[column.shop] as Bins), offset };
    offset += each.count;
    return each;
  });
  return { cells, worldBins, shopBins, years };
}

function liveBins(line: Float64Array): Bins {
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
      // In the order of the form: of two alterations of one part the earlier named is asked first.
      alterations: alterations.filter(
        (each) => each === alteration || joined.some((unit) => unit.alterations.includes(each)),
      ),
    });
  }
  const taken = new Set(units.flatMap((unit) => [...unit.parts]));
  return [
    ...units.map((unit) => ({ parts: [...unit.parts], alterations: unit.alterations })),
    ...parts.filter((part) => !taken.has(part)).map((part) => ({ parts: [part], alterations: [] })),
  ];
}
