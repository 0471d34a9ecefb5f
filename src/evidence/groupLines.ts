import { type Classes, lineAt } from './columnClasses.ts';
import type { HabitGroup } from './habitGroups.ts';
import type { Layout } from './layout.ts';
import type { Model } from './model.ts';
import type { Column } from './partTable.ts';
import { habitStateShare } from './partTable.ts';
import type { UnitLines } from './unitLines.ts';

/** One unit of a group, summed: its classes over the group's columns, and its lines. */
export type SummedUnit = { classes: Classes; lines: UnitLines };

/** How probable each state of a group's habits is, by its columns. */
export function stateShares(model: Model, group: HabitGroup): Float64Array {
  const { prepared, habits } = model.layout;
  const mine = group.columns.reduce((all, column) => all | column.habits, 0);
  const ids = habits.map((id, index) => ((mine >> index) & 1 ? id : undefined));
  return Float64Array.from(group.columns, (column: Column) =>
    group.states === 1 ? 1 : habitStateShare(column, { prepared, draw: model.draw, habits: ids }),
  );
}

/**
 * What the units of a group say together, their shared habits summed out: lines by config of the layout, class of the group
 * and strictness.
 */
export function groupLines(model: Model, group: HabitGroup, units: readonly SummedUnit[]): UnitLines {
  const { layout } = model;
  const [only] = units;
  if (only !== undefined && units.length === 1 && group.states === 1) return only.lines;
  const { configOf, configs } = configsOf(layout, units);
  const { classes, states } = group;
  const values = new Float64Array(configs.length * classes.size);
  const shares = stateShares(model, group);
  const longest = Math.max(...layout.worldBins.map((bins) => bins.count));
  const product = new Float64Array(longest * 4);
  configs.forEach((m, config) => {
    classes.columns.forEach((_, each) => {
      const length = (classes.count[each] as number) * (classes.levels[each] as number);
      const to = lineAt(classes, config, each, 0);
      for (let state = 0; state < states; state++) {
        const column = each * states + state;
        product.fill(shares[column] as number, 0, length);
        for (const unit of units) {
          const from = lineAt(
            unit.classes,
            unit.lines.configOf[m] as number,
            unit.classes.of[column] as number,
            0,
          );
          const line = unit.lines.values;
          for (let i = 0; i < length; i++) product[i] = (product[i] as number) * (line[from + i] as number);
        }
        for (let i = 0; i < length; i++) values[to + i] = (values[to + i] as number) + (product[i] as number);
      }
    });
  });
  return { values, configOf, log: units.reduce((sum, unit) => sum + unit.lines.log, 0) };
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
  const shares = stateShares(model, group);
  const longest = Math.max(...layout.worldBins.map((bins) => bins.count));
  const product = new Float64Array(longest * 4);
  layout.configs.forEach((_, m) => {
    classes.columns.forEach((_, each) => {
      const length = (classes.count[each] as number) * (classes.levels[each] as number);
      const at = lineAt(classes, m, each, 0);
      for (let state = 0; state < states; state++) {
        const column = each * states + state;
        const share = shares[column] as number;
        for (let i = 0; i < length; i++) product[i] = share * (rest[at + i] as number);
        for (const other of others) {
          const from = lineAt(
            other.classes,
            other.lines.configOf[m] as number,
            other.classes.of[column] as number,
            0,
          );
          const line = other.lines.values;
          for (let i = 0; i < length; i++) product[i] = (product[i] as number) * (line[from + i] as number);
        }
        const to = lineAt(unit.classes, unit.configOf[m] as number, unit.classes.of[column] as number, 0);
        for (let i = 0; i < length; i++) values[to + i] = (values[to + i] as number) + (product[i] as number);
      }
    });
  });
  return values;
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
