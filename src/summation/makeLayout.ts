import { causeShares } from '../evidence/causeShares.ts';
import { isClaimed } from '../evidence/claimedShop.ts';
import { figureRange } from '../evidence/figures.ts';
import { imitates } from '../evidence/imitation.ts';
import type { ModelPart, PreparedCase } from '../evidence/preparedCase.ts';
import { shopPriors, worlds, yearPriors } from '../evidence/worlds.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { type Asked, askedAt } from './asked.ts';
import { habitGroups } from './habitGroups.ts';
import { Kept } from './kept.ts';
import type { Bins, Clique, Frame, Layout, Scenario } from './layout.ts';
import { Worked } from './worked.ts';

/** At most so many habits are drawn once for the piece; each doubles the states of the parts it binds. */
const mostHabits = 5;

/**
 * Lays out scenarios, cutset states, cliques and groups for a prepared case.
 *
 * @param fine  tells every world and shop apart everywhere. Without it shops of which no habit was looked for have no
 *   scenarios of their own: they differ from "unlisted" in nothing that was seen, so only what is yet to be seen needs them
 * @param kept  what the case before left
 */
export function layOut(prepared: PreparedCase, fine = false, kept = new Kept()): Layout {
  const asked = askedAt(prepared.looks);
  const signs = new Set([...asked.values()].flatMap((each) => [...each.habits]));
  const heard = prepared.shops.map((shop) => fine || shop.habits.some((habit) => signs.has(habit.sign)));
  const habits = sharedHabits([...asked.values()]);
  const { form, parts, alterations, shops, span, place, odds, axis, yearNow } = prepared;
  const ids = [parts, alterations, shops].map((each) => each.map(({ id }) => id));
  const name = JSON.stringify([fine, heard, habits, form.id, ids, span, place, odds, axis, yearNow]);
  const frame = kept.frameFor(prepared, name, () => makeFrame(prepared, fine, heard, habits));
  const layout = { ...frame, prepared, asked };
  return { ...layout, groups: habitGroups(layout) };
}

/** @param heard  by shop: whether it has scenarios of its own */
function makeFrame(
  prepared: PreparedCase,
  fine: boolean,
  heard: readonly boolean[],
  habits: readonly string[],
): Frame {
  const { worldBins, shopBins, years } = binsOf(prepared);
  const scenarios: Scenario[] = worlds.flatMap((world, index) => {
    const shops = prepared.shops.flatMap((shop, s) => {
      // A shop that had closed before the first year of such pieces made none of them.
      const can =
        world.making === 'period'
          ? (shopBins[index]?.[s + 1]?.count ?? 0) > 0
          : imitates(world.making) && isClaimed(shop, prepared.place);
      return can && heard[s] === true ? [s + 1] : [];
    });
    return [0, ...shops].map((shop) => ({ world: index, shop, habits: 0 }));
  });
  const changed = (alteration: Alteration) =>
    prepared.parts.filter((part) => alteration.changes[part.kind] !== undefined);
  const makeUps = prepared.alterations.filter((each) =>
    changed(each).some((part) => each.changes[part.kind]?.to === 'other-old'),
  );
  const others = prepared.alterations.filter((each) => !makeUps.includes(each));
  const cutsetStates = Array.from({ length: 2 ** makeUps.length }, (_, bits) => ({
    happened: makeUps.map((_, index) => ((bits >> index) & 1) === 1),
  }));
  const periodScenarios = scenarios.filter((scenario) => worlds[scenario.world]?.making === 'period').length;
  const cells = cellsOf(scenarios, shopBins);
  const end = (scenario: number) =>
    cells[scenario]?.offset ?? cells.reduce((sum, each) => sum + each.count, 0);
  return {
    fine,
    scenarios,
    periodScenarios,
    habits,
    cells,
    cellCount: end(scenarios.length),
    periodCellCount: end(periodScenarios),
    worldBins,
    shopBins,
    years,
    cliques: cliquesOf(prepared.parts, others, changed),
    makeUps,
    cutsetStates,
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

/** Signs of the maker's habit looked for on more than one part: those on most parts, by name. */
function sharedHabits(asked: readonly Asked[]): string[] {
  const counts = new Map<string, number>();
  for (const sign of asked.flatMap(({ habits }) => [...habits]))
    counts.set(sign, (counts.get(sign) ?? 0) + 1);
  return [...counts]
    .filter(([, count]) => count > 1)
    .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
    .slice(0, mostHabits)
    .map(([id]) => id)
    .sort();
}

/** By world and shop the bins where its years have any share. */
function binsOf(prepared: PreparedCase) {
  const years = yearPriors(prepared);
  const shops = shopPriors(prepared, () => 0.01);
  const worldBins = worlds.map((world) => liveBins(years[world.making]));
  const ofPeriod = shops.map((shop, index) =>
    liveBins(index === 0 ? years.period : years.period.map((each, bin) => each * (shop[bin] as number))),
  );
  // Only period work is of a listed shop, and of its years; what was made after it is as late as any copy.
  const shopBins = worlds.map((world, w) =>
    world.making === 'period' ? ofPeriod : shops.map(() => worldBins[w] as Bins),
  );
  return { worldBins, shopBins, years };
}

/** The cells of every scenario: the bins where its world's years and its shop's years both have any share. */
function cellsOf(scenarios: readonly Scenario[], shopBins: readonly (readonly Bins[])[]) {
  let offset = 0;
  return scenarios.map((scenario) => {
    const each = { ...(shopBins[scenario.world]?.[scenario.shop] as Bins), offset };
    offset += each.count;
    return each;
  });
}

function liveBins(line: Float64Array): Bins {
  const first = line.findIndex((each) => each > 0);
  const last = line.findLastIndex((each) => each > 0);
  return first < 0 ? { first: 0, count: 0 } : { first, count: last - first + 1 };
}

/** Alterations that share a part stand in one clique, with all the parts they can change; every other part stands alone. */
function cliquesOf(
  parts: readonly ModelPart[],
  alterations: readonly Alteration[],
  changed: (each: Alteration) => ModelPart[],
): Clique[] {
  const cliques: { parts: Set<ModelPart>; alterations: Alteration[] }[] = [];
  for (const alteration of alterations) {
    const mine = changed(alteration);
    const joined = cliques.filter((clique) => mine.some((part) => clique.parts.has(part)));
    const rest = cliques.filter((clique) => !joined.includes(clique));
    const all = new Set([...joined.flatMap((clique) => [...clique.parts]), ...mine]);
    cliques.splice(0, cliques.length, ...rest, {
      parts: all,
      // In the order of the form: of two alterations of one part the earlier named is asked first.
      alterations: alterations.filter(
        (each) => each === alteration || joined.some((clique) => clique.alterations.includes(each)),
      ),
    });
  }
  const taken = new Set(cliques.flatMap((clique) => [...clique.parts]));
  return [
    ...cliques.map((clique) => ({ parts: [...clique.parts], alterations: clique.alterations })),
    ...parts.filter((part) => !taken.has(part)).map((part) => ({ parts: [part], alterations: [] })),
  ];
}
