import { worlds } from '../evidence/worlds.ts';
import { lineAt } from './columnClasses.ts';
import type { GroupPlan, PlanState } from './groupPlan.ts';
import type { HabitGroup, UnitShape } from './layout.ts';
import { type Layout, strictest } from './layout.ts';
import type { Model } from './model.ts';
import { habitStateShare } from './partHabits.ts';
import type { ReadyUnit } from './readyUnit.ts';
import type { UnitLines } from './unitLines.ts';

/** One unit of a group, summed; its classes are over the group's columns. */
export type SummedUnit = { shape: UnitShape; ready: ReadyUnit; lines: UnitLines };

/**
 * What the units of a group say together, their shared habits summed out: lines by config, class of the group and
 * strictness.
 */
export function groupLines(model: Model, group: HabitGroup, units: readonly SummedUnit[]): UnitLines {
  const { layout } = model;
  const [only] = units;
  if (only !== undefined && units.length === 1 && group.states === 1) return only.lines;
  const { configOf, configs } = configsOf(layout, units);
  const { classes } = group;
  const values = new Float64Array(configs.length * classes.size);
  const longest = Math.max(...classes.count);
  const rooms = [new Float64Array(longest).fill(1), ...planRooms(group, longest)];
  const shown = habitShares(model, group);
  configs.forEach((m, config) => {
    const last = strictest(layout, m);
    for (let each = 0; each < classes.columns.length; each++) {
      const count = classes.count[each] as number;
      for (let k = 0; k < (classes.levels[each] as number) && k <= last; k++) {
        const to = lineAt(classes, config, each, k);
        if (k > 0 && units.every((unit) => unit.shape.same[k])) {
          values.copyWithin(to, to - count, to);
          continue;
        }
        runPlan({ group, units, shown, rooms }, { m, each, k, count });
        const held = rooms[group.plan.length] as Float64Array;
        for (let i = 0; i < count; i++) values[to + i] = held[i] as number;
      }
    }
  });
  return { values, configOf, log: units.reduce((sum, unit) => sum + unit.lines.log, 0) };
}

function planRooms(group: HabitGroup, longest: number): Float64Array[] {
  return group.plan.map(({ held }) => new Float64Array(held * longest));
}

/** Which config, class and strictness is summed, and how long its line is. */
type At = { m: number; each: number; k: number; count: number };

/** What a run over the plan of a group leans on. */
type PlanRun = {
  group: HabitGroup;
  units: readonly SummedUnit[];
  shown: Float64Array;
  /** By number of steps done: states held × bins. */
  rooms: readonly Float64Array[];
};

/** Multiplies the units of a group in the order of its plan, for one config, class and strictness. */
function runPlan({ group, units, shown, rooms }: PlanRun, at: At): void {
  const { count } = at;
  for (let number = 0; number < group.plan.length; number++) {
    const step = group.plan[number] as GroupPlan[number];
    const held = rooms[number] as Float64Array;
    const into = rooms[number + 1] as Float64Array;
    into.fill(0, 0, step.held * count);
    const unit = units[step.unit] as SummedUnit;
    const line = unit.lines.values;
    for (const state of step.states) {
      const weight = freshWeight(group, shown, state, at.each);
      const from = lineOfState(group, unit, state, at);
      const a = state.before * count;
      const b = state.after * count;
      for (let i = 0; i < count; i++)
        into[b + i] = (into[b + i] as number) + weight * (held[a + i] as number) * (line[from + i] as number);
    }
  }
}

/** How probable the habits that come in with a state are. */
function freshWeight(group: HabitGroup, shown: Float64Array, { fresh }: PlanState, each: number): number {
  let weight = 1;
  for (let f = 0; f < fresh.length; f++) {
    const [habit, is] = fresh[f] as readonly [number, boolean];
    const share = shown[each * group.habits.length + habit] as number;
    weight *= is ? share : 1 - share;
  }
  return weight;
}

/** Where a unit's line for a state of the habits begins. */
function lineOfState(
  group: HabitGroup,
  unit: SummedUnit,
  state: PlanState,
  { m, each, k }: At,
  classes = unit.shape.classes,
): number {
  const unitClass = classes.of[each * group.states + state.whole] as number;
  return lineAt(classes, unit.lines.configOf[m] as number, unitClass, k);
}

/**
 * For every unit of a group, the sum of all else over its own classes, by its configs: the rest of the group is brought in
 * from the group's classes.
 *
 * Method: the plan of `groupLines` run forwards and then backwards (reverse accumulation), so that all units cost about
 * three sums.
 *
 * @param rest    by config of the layout and class of the group
 * @param strict  false leaves the stricter sums out: tables are laid out as `plain` classes are
 */
export function unitRests(
  model: Model,
  group: HabitGroup,
  rest: Float64Array,
  units: readonly SummedUnit[],
  strict: boolean,
): Float64Array[] {
  const { layout } = model;
  const { plan } = group;
  const classes = strict ? group.classes : group.plain;
  const [only] = units;
  // By itself and with every config its own, a unit has the rest as it is.
  if (
    only !== undefined &&
    units.length === 1 &&
    group.states === 1 &&
    only.shape.configs.length === layout.configs.length
  )
    return [rest];
  const tables = units.map(({ shape }) => (strict ? shape.classes : shape.plain));
  const values = units.map(({ shape }, u) => new Float64Array(shape.configs.length * (tables[u]?.size ?? 0)));
  const longest = Math.max(...classes.count);
  const rooms = [new Float64Array(longest).fill(1), ...planRooms(group, longest)];
  const backs = rooms.map((room) => new Float64Array(room.length));
  const shown = habitShares(model, group);
  layout.configs.forEach((_, m) => {
    const last = strict ? strictest(layout, m) : 0;
    for (let each = 0; each < classes.columns.length; each++) {
      const count = classes.count[each] as number;
      for (let k = 0; k < (classes.levels[each] as number) && k <= last; k++) {
        const at = { m, each, k, count };
        runPlan({ group, units, shown, rooms }, at);
        const start = lineAt(classes, m, each, k);
        const end = backs[plan.length] as Float64Array;
        for (let i = 0; i < count; i++) end[i] = rest[start + i] as number;
        for (let number = plan.length - 1; number >= 0; number--) {
          const step = plan[number] as GroupPlan[number];
          const held = rooms[number] as Float64Array;
          const into = backs[number] as Float64Array;
          const back = backs[number + 1] as Float64Array;
          into.fill(0);
          const unit = units[step.unit] as SummedUnit;
          const line = unit.lines.values;
          const own = values[step.unit] as Float64Array;
          for (const state of step.states) {
            const weight = freshWeight(group, shown, state, each);
            const from = lineOfState(group, unit, state, at);
            const ownAt = lineOfState(group, unit, state, at, tables[step.unit]);
            const a = state.before * count;
            const b = state.after * count;
            for (let i = 0; i < count; i++) {
              const by = weight * (back[b + i] as number);
              own[ownAt + i] = (own[ownAt + i] as number) + by * (held[a + i] as number);
              into[a + i] = (into[a + i] as number) + by * (line[from + i] as number);
            }
          }
        }
      }
    }
  });
  return values;
}

/** By class and habit of a group: how probable it is that the maker's way shows the habit. */
function habitShares(model: Model, { classes, habits }: HabitGroup): Float64Array {
  const { prepared } = model.layout;
  const shares = new Float64Array(classes.columns.length * habits.length);
  habits.forEach((habit, h) => {
    const id = model.layout.habits[habit] as string;
    const known = new Map<string, number>();
    classes.columns.forEach(({ world, shop }, each) => {
      const key = `${worlds[world]?.making} ${shop}`;
      const share =
        known.get(key) ??
        habitStateShare({ world, shop, habits: 1 }, { prepared, draw: model.draw, habits: [id] });
      known.set(key, share);
      shares[each * habits.length + h] = share;
    });
  });
  return shares;
}

/** Configs that differ to any of the units. */
function configsOf(
  layout: Layout,
  units: readonly SummedUnit[],
): { configOf: Int32Array; configs: number[] } {
  const names = new Map<string, number>();
  const configs: number[] = [];
  const configOf = Int32Array.from(layout.configs, (_, m) => {
    const name = units.map((unit) => unit.lines.configOf[m]).join();
    const before = names.get(name);
    if (before !== undefined) return before;
    names.set(name, configs.length);
    configs.push(m);
    return configs.length - 1;
  });
  return { configOf, configs };
}
