import { type Classes, lineAt } from './columnClasses.ts';
import type { HabitGroup } from './habitGroups.ts';
import { type Layout, strictest } from './layout.ts';
import type { Model } from './model.ts';
import { habitStateShare } from './partHabits.ts';
import type { UnitLines } from './unitLines.ts';
import { worlds } from './worlds.ts';

/** One unit of a group, summed: its classes over the group's columns, its lines, and the strictnesses that add nothing new. */
export type SummedUnit = { classes: Classes; lines: UnitLines; same: readonly boolean[] };

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
  const rooms = group.plan.map(({ held }) => new Float64Array(held * longest));
  const ones = new Float64Array(longest).fill(1);
  const shown = habitShares(model, group);
  configs.forEach((m, config) => {
    const last = strictest(layout, m);
    classes.columns.forEach((_, each) => {
      const count = classes.count[each] as number;
      for (let k = 0; k < (classes.levels[each] as number) && k <= last; k++) {
        const to = lineAt(classes, config, each, k);
        if (k > 0 && units.every((unit) => unit.same[k])) {
          values.copyWithin(to, to - count, to);
          continue;
        }
        let held: Float64Array = ones;
        group.plan.forEach((step, number) => {
          const unit = units[step.unit] as SummedUnit;
          const next = rooms[number] as Float64Array;
          next.fill(0, 0, step.held * count);
          const table = unit.lines.configOf[m] as number;
          for (const state of step.states) {
            let weight = 1;
            for (const [habit, is] of state.fresh) {
              const share = shown[each * group.habits.length + habit] as number;
              weight *= is ? share : 1 - share;
            }
            const column = each * group.states + state.whole;
            const at = lineAt(unit.classes, table, unit.classes.of[column] as number, k);
            addProduct(
              next,
              state.after * count,
              held,
              state.before * count,
              unit.lines.values,
              at,
              weight,
              count,
            );
          }
          held = next;
        });
        for (let i = 0; i < count; i++) values[to + i] = held[i] as number;
      }
    });
  });
  return { values, configOf, log: units.reduce((sum, unit) => sum + unit.lines.log, 0) };
}

function addProduct(
  into: Float64Array,
  to: number,
  held: Float64Array,
  from: number,
  line: Float64Array,
  at: number,
  weight: number,
  count: number,
): void {
  for (let i = 0; i < count; i++)
    into[to + i] = (into[to + i] as number) + weight * (held[from + i] as number) * (line[at + i] as number);
}

/**
 * The sum of all else for the classes of one unit of a group: the rest of the group brought in from its classes.
 *
 * @param rest    by config of the layout and class of the group
 * @param others  the group's other units
 * @returns by config of the unit and its classes
 */
export function unitRest(
  model: Model,
  group: HabitGroup,
  rest: Float64Array,
  unit: { classes: Classes; configOf: Int32Array; configs: readonly number[] },
  others: readonly SummedUnit[],
): Float64Array {
  const { layout } = model;
  const { classes, states } = group;
  const values = new Float64Array(unit.configs.length * unit.classes.size);
  const shown = habitShares(model, group);
  const product = new Float64Array(4 * Math.max(...classes.count));
  layout.configs.forEach((_, m) => {
    const last = strictest(layout, m);
    classes.columns.forEach((_, each) => {
      const length = (classes.count[each] as number) * Math.min(last + 1, classes.levels[each] as number);
      const at = lineAt(classes, m, each, 0);
      for (let state = 0; state < states; state++) {
        const column = each * states + state;
        let share = 1;
        for (let h = 0; h < group.habits.length; h++) {
          const one = shown[each * group.habits.length + h] as number;
          share *= (state >> h) & 1 ? one : 1 - one;
        }
        for (let i = 0; i < length; i++) product[i] = share * (rest[at + i] as number);
        for (const other of others) {
          const table = other.lines.configOf[m] as number;
          const from = lineAt(other.classes, table, other.classes.of[column] as number, 0);
          for (let i = 0; i < length; i++)
            product[i] = (product[i] as number) * (other.lines.values[from + i] as number);
        }
        const to = lineAt(unit.classes, unit.configOf[m] as number, unit.classes.of[column] as number, 0);
        for (let i = 0; i < length; i++) values[to + i] = (values[to + i] as number) + (product[i] as number);
      }
    });
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
