import { boundCampaigns } from '../evidence/campaigns.ts';
import { causeShares } from '../evidence/causeShares.ts';
import { figureRange } from '../evidence/figures.ts';
import type { Look, ModelPart, PreparedCase } from '../evidence/preparedCase.ts';
import { shopPriors, worlds, yearPriors } from '../evidence/worlds.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { habitGroups } from './habitGroups.ts';
import type { Bins, Column, Layout, Unit } from './layout.ts';
import { Worked } from './worked.ts';

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
    worked: new Worked(),
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
