import { groupPlan } from './groupPlan.ts';
import type { Clique, HabitGroup, Layout, Scenario } from './layout.ts';
import { bitsOf, layoutClasses, plainClasses } from './scenarioClasses.ts';

type Grounds = Omit<Layout, 'groups'>;

/** Cliques that bear on anything, grouped by the habits they share; cliques that nothing was looked for on are left out. */
export function habitGroups(layout: Grounds): HabitGroup[] {
  const groups: { cliques: number[]; bits: number }[] = [];
  layout.cliques.forEach((clique, u) => {
    if (isIdle(layout, clique)) return;
    const bits = habitBits(layout, clique);
    const joined = groups.filter((each) => (each.bits & bits) !== 0);
    const rest = groups.filter((each) => !joined.includes(each));
    const all = joined.reduce((sum, each) => sum | each.bits, bits);
    groups.splice(0, groups.length, ...rest, {
      cliques: [...joined.flatMap((each) => each.cliques), u],
      bits: all,
    });
  });
  return groups.map(({ cliques, bits }) => groupFor(layout, cliques, bits));
}

/** The group a clique stands in; an idle one stands by itself. */
export function groupOf(layout: Layout, cliqueIndex: number): HabitGroup {
  return (
    layout.groups.find((each) => each.cliques.includes(cliqueIndex)) ?? groupFor(layout, [cliqueIndex], 0)
  );
}

/** A part by itself that nothing was looked for on: it bears only on whether the piece is intact. */
export function isIdle({ asked }: Pick<Layout, 'asked'>, clique: Clique): boolean {
  return clique.alterations.length === 0 && !clique.parts.some((part) => asked.has(part.id));
}

function habitBits({ asked, habits }: Pick<Layout, 'asked' | 'habits'>, clique: Clique): number {
  return clique.parts.reduce((bits, part) => bits | bitsOf(habits, asked.get(part.id)?.habits), 0);
}

function groupFor(layout: Grounds, cliques: readonly number[], bits: number): HabitGroup {
  const name = cliques
    .map((u) => `${u} ${layout.cliques[u]?.parts.map((part) => layout.asked.get(part.id)?.name).join(' ')}`)
    .join(';');
  return layout.worked.once('group', name, () => makeGroup(layout, cliques, bits, name));
}

function makeGroup(layout: Grounds, cliques: readonly number[], bits: number, name: string): HabitGroup {
  const parts = cliques.flatMap((u) => layout.cliques[u]?.parts ?? []);
  const classes = layoutClasses(layout, parts);
  const habits = layout.habits.flatMap((_, index) => ((bits >> index) & 1 ? [index] : []));
  const states = 2 ** habits.length;
  const scenarios: Scenario[] = [];
  for (const { world, shop } of classes.scenarios)
    for (let state = 0; state < states; state++) {
      let shown = 0;
      for (let h = 0; h < habits.length; h++) if ((state >> h) & 1) shown |= 1 << (habits[h] as number);
      scenarios.push({ world, shop, habits: shown });
    }
  const asks = cliques.map((u) => {
    const own = habitBits(layout, layout.cliques[u] as Clique);
    return habits.reduce((all, habit, h) => ((own >> habit) & 1 ? all | (1 << h) : all), 0);
  });
  return {
    name,
    cliques,
    habits,
    plan: groupPlan(asks),
    classes,
    plain: plainClasses(classes),
    states,
    scenarios,
  };
}
