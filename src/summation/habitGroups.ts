import { groupPlan } from './groupPlan.ts';
import type { Classes, Clique, HabitGroup, Layout, Scenario } from './layout.ts';
import { bitsOf, plainClasses, scenarioClasses } from './scenarioClasses.ts';

type Grounds = Pick<Layout, 'prepared' | 'fine' | 'scenarios' | 'cliques' | 'habits' | 'shopBins'>;

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
  const known = new Map<string, Classes>();
  return groups.map(({ cliques, bits }) => makeGroup(layout, cliques, bits, known));
}

/** The group a clique stands in; an idle one stands by itself. */
export function groupOf(layout: Layout, cliqueIndex: number): HabitGroup {
  const found =
    layout.groups.find((each) => each.cliques.includes(cliqueIndex)) ??
    layout.worked.known('idleGroup', cliqueIndex);
  if (found !== undefined) return found;
  const made = makeGroup(layout, [cliqueIndex], 0);
  layout.worked.keep('idleGroup', cliqueIndex, made);
  return made;
}

/** A part by itself that nothing was looked for on: it bears only on whether the piece is intact. */
export function isIdle(layout: Pick<Layout, 'prepared'>, clique: Clique): boolean {
  return (
    clique.alterations.length === 0 &&
    clique.parts.every((part) =>
      layout.prepared.looks.every(
        (look) => look.part !== part.id || look.sign.hangsOn.startsWith('alteration/'),
      ),
    )
  );
}

function habitBits({ prepared, habits }: Pick<Layout, 'prepared' | 'habits'>, clique: Clique): number {
  const signs = prepared.looks
    .filter((look) => look.sign.hangsOn === 'making' && clique.parts.some((part) => part.id === look.part))
    .map((look) => look.sign.id);
  return bitsOf(habits, new Set(signs));
}

function makeGroup(
  layout: Omit<Grounds, 'groups'>,
  cliques: readonly number[],
  bits: number,
  known?: Map<string, Classes>,
): HabitGroup {
  const parts = cliques.flatMap((u) => layout.cliques[u]?.parts ?? []);
  const classes = scenarioClasses(layout, layout.scenarios, parts, known);
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
  return { cliques, habits, plan: groupPlan(asks), classes, plain: plainClasses(classes), states, scenarios };
}
