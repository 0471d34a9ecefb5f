import { bitsOf, columnClasses, plainClasses } from './columnClasses.ts';
import { groupPlan } from './groupPlan.ts';
import type { Classes, Column, HabitGroup, Layout, Unit } from './layout.ts';

type Grounds = Pick<Layout, 'prepared' | 'fine' | 'columns' | 'units' | 'habits' | 'shopBins'>;

/** Units that bear on anything, grouped by the habits they share; units that nothing was looked for on are left out. */
export function habitGroups(layout: Grounds): HabitGroup[] {
  const groups: { units: number[]; bits: number }[] = [];
  layout.units.forEach((unit, u) => {
    if (isIdle(layout, unit)) return;
    const bits = habitBits(layout, unit);
    const joined = groups.filter((each) => (each.bits & bits) !== 0);
    const rest = groups.filter((each) => !joined.includes(each));
    const all = joined.reduce((sum, each) => sum | each.bits, bits);
    groups.splice(0, groups.length, ...rest, {
      units: [...joined.flatMap((each) => each.units), u],
      bits: all,
    });
  });
  const known = new Map<string, Classes>();
  return groups.map(({ units, bits }) => makeGroup(layout, units, bits, known));
}

/** The group a unit stands in; an idle one stands by itself. */
export function groupOf(layout: Layout, unitIndex: number): HabitGroup {
  const found =
    layout.groups.find((each) => each.units.includes(unitIndex)) ??
    layout.worked.known('idleGroup', unitIndex);
  if (found !== undefined) return found;
  const made = makeGroup(layout, [unitIndex], 0);
  layout.worked.keep('idleGroup', unitIndex, made);
  return made;
}

/** A part by itself that nothing was looked for on: it bears only on whether the piece is intact. */
export function isIdle(layout: Pick<Layout, 'prepared'>, unit: Unit): boolean {
  return (
    unit.alterations.length === 0 &&
    unit.parts.every((part) =>
      layout.prepared.looks.every(
        (look) => look.part !== part.id || look.sign.hangsOn.startsWith('alteration/'),
      ),
    )
  );
}

function habitBits({ prepared, habits }: Pick<Layout, 'prepared' | 'habits'>, unit: Unit): number {
  const signs = prepared.looks
    .filter((look) => look.sign.hangsOn === 'making' && unit.parts.some((part) => part.id === look.part))
    .map((look) => look.sign.id);
  return bitsOf(habits, new Set(signs));
}

function makeGroup(
  layout: Omit<Grounds, 'groups'>,
  units: readonly number[],
  bits: number,
  known?: Map<string, Classes>,
): HabitGroup {
  const parts = units.flatMap((u) => layout.units[u]?.parts ?? []);
  const classes = columnClasses(layout, layout.columns, parts, known);
  const habits = layout.habits.flatMap((_, index) => ((bits >> index) & 1 ? [index] : []));
  const states = 2 ** habits.length;
  const columns: Column[] = [];
  for (const { world, shop } of classes.columns)
    for (let state = 0; state < states; state++) {
      let shown = 0;
      for (let h = 0; h < habits.length; h++) if ((state >> h) & 1) shown |= 1 << (habits[h] as number);
      columns.push({ world, shop, habits: shown });
    }
  const asks = units.map((u) => {
    const own = habitBits(layout, layout.units[u] as Unit);
    return habits.reduce((all, habit, h) => ((own >> habit) & 1 ? all | (1 << h) : all), 0);
  });
  return { units, habits, plan: groupPlan(asks), classes, plain: plainClasses(classes), states, columns };
}
