import { groupLikelihood, type Report, reportLikelihood } from '../evidence/groupLikelihood.ts';
import { takenOver } from '../evidence/imitation.ts';
import type { Look, ModelPart } from '../evidence/preparedCase.ts';
import { inGroups, looksLikelihood, reportOf, shareIn } from '../evidence/signShares.ts';
import { worlds } from '../evidence/worlds.ts';
import type { Scenario } from './layout.ts';
import type { PartContext } from './partContext.ts';

/** What hangs on the maker's habit: for a part of the making by scenario, for one put in later, and for an old one. */
export type PartHabits = { own: Float64Array; later: number; old: number };

/** Tabulates looks that hang on the maker's habit. */
export function partHabits(part: ModelPart, looks: readonly Look[], context: PartContext): PartHabits {
  const { prepared, draw } = context;
  const groups = inGroups(looks);
  const all = (state: string, standIn?: string) =>
    groups.length === 0
      ? 1
      : looksLikelihood(groups, prepared.knowledge.making, draw, (look) =>
          shareIn(look.sign, state, draw, standIn),
        );
  return {
    own: habitByScenario(part, looks, context),
    later: all('later', 'bench-copy'),
    old: all('period'),
  };
}

/** The maker's-habit factor by scenario: a shop's habit stands in the place of the general rate for period work. */
function habitByScenario(part: ModelPart, looks: readonly Look[], context: PartContext): Float64Array {
  const { prepared, draw, scenarios } = context;
  const { making } = prepared.knowledge;
  if (looks.length === 0) return new Float64Array(scenarios.length).fill(1);
  const ways = new Map(looks.map((look) => [look, habitWay(part, look, context)]));
  const groups = inGroups(looks).map((group) => group.map((look) => ways.get(look) as HabitWay));
  const together = groups.some((group) => group.length > 1) ? draw(making.groupTogether) : 0;
  return Float64Array.from(scenarios, (scenario) => {
    let product = 1;
    for (const group of groups) {
      const [only] = group;
      if (only !== undefined && group.length === 1) {
        product *= reportLikelihood(shareOfWay(only, scenario), only.report);
      } else
        product *= groupLikelihood(
          group.map((way) => shareOfWay(way, scenario)),
          group.map((way) => way.report),
          together,
        );
    }
    return product;
  });
}

/** For one look at the maker's habit by itself: how probable it is in a scenario. */
export function habitLikelihood(
  part: ModelPart,
  look: Look,
  context: PartContext,
): (scenario: Scenario) => number {
  const way = habitWay(part, look, context);
  return (scenario) => reportLikelihood(shareOfWay(way, scenario), way.report);
}

/** One look at the maker's habit, its figures read: by world, and by shop where a shop's file holds the habit. */
type HabitWay = {
  report: Report;
  byWorld: readonly number[];
  /** By world: how much of a shop's own habit it has, 1 for the shop's own work. */
  taken: readonly number[];
  /** By shop: its share where it has one for this kind of part, and whether its file leaves this kind out. */
  byShop: readonly (number | undefined)[];
  leftOut: readonly boolean[];
  /** Bit of the shared habit, or 0; and how far the maker keeps to it. */
  bit: number;
  together: number;
};

function habitWay(part: ModelPart, look: Look, { prepared, draw, habits }: PartContext): HabitWay {
  const { making } = prepared.knowledge;
  // A measurement that speaks of the making itself takes the place of every rate of the sign, a shop’s too.
  const ofMaking = look.byState !== undefined;
  const own = prepared.shops.map((shop) =>
    ofMaking ? undefined : shop.habits.find((each) => each.sign === look.sign.id),
  );
  const leftOut = own.map((way) => way?.on !== undefined && !way.on.includes(part.kind));
  const bit = ofMaking ? 0 : bitOf(habits.indexOf(look.sign.id));
  return {
    report: reportOf(look, making, draw),
    byWorld: worlds.map((world) => shareIn(look.sign, world.making, draw)),
    taken: worlds.map((world) => takenOver(look.sign, world.making, prepared, draw)),
    byShop: own.map((way, s) => (way === undefined || leftOut[s] === true ? undefined : draw(way.shows))),
    leftOut,
    bit,
    together: bit === 0 ? 0 : draw(making.habitTogether),
  };
}

function shareOfWay(
  { byWorld, taken, byShop, leftOut, bit, together }: HabitWay,
  scenario: Scenario,
): number {
  const general = byWorld[scenario.world] as number;
  const share = mixed(general, byShop[scenario.shop - 1], taken[scenario.world] as number);
  // A habit that the shop keeps on other kinds of part only says nothing of this one.
  if (bit === 0 || leftOut[scenario.shop - 1] === true) return share;
  return (1 - together) * share + ((scenario.habits & bit) === 0 ? 0 : together);
}

/** A shop's habit in so far as it is kept or taken over, the general rate for the rest. */
function mixed(general: number, own: number | undefined, taken: number): number {
  return own === undefined ? general : taken * own + (1 - taken) * general;
}

function bitOf(index: number): number {
  return index < 0 ? 0 : 1 << index;
}

/** How probable a state of the shared habits is in a world and shop. */
export function habitStateShare(
  scenario: Scenario,
  context: Pick<PartContext, 'prepared' | 'draw' | 'habits'>,
): number {
  const { prepared, draw, habits } = context;
  const made = worlds[scenario.world]?.making ?? 'period';
  return habits.reduce((product, id, h) => {
    const sign = prepared.knowledge.signs[id];
    const ownWay = prepared.shops[scenario.shop - 1]?.habits.find((each) => each.sign === id);
    if (sign === undefined) return 0;
    const own = ownWay === undefined ? undefined : draw(ownWay.shows);
    const share = mixed(shareIn(sign, made, draw), own, takenOver(sign, made, prepared, draw));
    return product * (scenario.habits & bitOf(h) ? share : 1 - share);
  }, 1);
}
