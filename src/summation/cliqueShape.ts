import type { ModelPart } from '../evidence/preparedCase.ts';
import { makings, worlds } from '../evidence/worlds.ts';
import { changeSteps } from './changeSteps.ts';
import { subsetsOf } from './groupPlan.ts';
import { habitClassTrees } from './habitClassTrees.ts';
import { groupOf } from './habitGroups.ts';
import type { Classes, CliqueShape, HabitClasses, HabitGroup, Scenario } from './layout.ts';
import { allowedAt, type Clique, type Layout, levels } from './layout.ts';
import { bitsOf, ownClasses, plainClasses, scenarioClasses } from './scenarioClasses.ts';

/**
 * The shape of a clique for the looks of the case.
 *
 * @param also  a part to tell apart though nothing was looked for on it
 */
export function cliqueShape(layout: Layout, cliqueIndex: number, also?: string): CliqueShape {
  const clique = layout.cliques[cliqueIndex] as Clique;
  const isAsked = (part: ModelPart) => layout.asked.has(part.id);
  const isTold = (part: ModelPart) =>
    isAsked(part) ||
    part.id === also ||
    (part.structural &&
      clique.alterations.some((each) => allowedAt(each, 3) && each.changes[part.kind] !== undefined));
  const stranger = also !== undefined && !clique.parts.some((part) => part.id === also && isAsked(part));
  const group = groupOf(layout, cliqueIndex);
  const name = `${cliqueIndex} ${stranger ? also : ''} of ${group.name}`;
  return layout.worked.once('shape', name, () => ({
    name,
    ...makeShape(layout, group, cliqueIndex, clique.parts.filter(isTold)),
  }));
}

function makeShape(
  layout: Layout,
  group: HabitGroup,
  cliqueIndex: number,
  told: readonly ModelPart[],
): Omit<CliqueShape, 'name'> {
  const clique = layout.cliques[cliqueIndex] as Clique;
  // The scenarios of a clique by itself are classed by its own looks already.
  const classes =
    group.cliques.length === 1 && group.states === 1
      ? ownClasses(group.classes)
      : scenarioClasses(layout, group.scenarios, clique.parts);
  const ranked = told
    .map((part) => ({ part, habitClasses: habitClassesOf(layout, classes, part) }))
    .sort((a, b) => b.habitClasses.scenarios.length - a.habitClasses.scenarios.length);
  const withHabits = ranked.filter(({ habitClasses }) => habitClasses.scenarios.length > 1).length;
  const parts = ranked.map((each) => each.part);
  const habitClasses = ranked.map((each) => each.habitClasses);
  const touching = layout.makeUps.map((each) =>
    clique.parts.some((part) => each.changes[part.kind] !== undefined),
  );
  // By all its parts, told or not, so that a clique has the same cutset states whatever is asked of it.
  const cutsetStates: number[] = [];
  const names = new Map<string, number>();
  const cutsetStateOf = Int32Array.from(layout.cutsetStates, ({ happened }, m) => {
    // What matters of a cutset state to this clique are the make-ups that touch it; the first of a name has no others.
    const name = happened.filter((_, a) => touching[a] === true).join();
    const before = names.get(name);
    if (before !== undefined) return before;
    names.set(name, cutsetStates.length);
    cutsetStates.push(m);
    return cutsetStates.length - 1;
  });
  const masks = clique.alterations.map((each) =>
    parts.reduce((all, part, p) => (each.changes[part.kind] === undefined ? all : all | (1 << p)), 0),
  );
  return {
    cliqueIndex,
    clique,
    parts,
    withHabits,
    idle: clique.parts.filter((part) => part.structural && !told.includes(part)),
    classes,
    plain: plainClasses(classes),
    habitClasses,
    trees: habitClassTrees(layout, classes, habitClasses.slice(0, withHabits)),
    masks,
    steps: changeSteps(layout, clique.alterations, masks, parts),
    live: levels.map((_, k) => {
      const reach = clique.alterations.reduce(
        (all, each, a) => (allowedAt(each, k) ? all | (masks[a] as number) : all),
        0,
      );
      return Array.from({ length: parts.length + 1 }, (_, p) =>
        Int32Array.from(subsetsOf(reach & (2 ** p - 1))),
      );
    }),
    cutsetStateOf,
    cutsetStates,
    same: levels.map(
      (_, k) =>
        k > 0 &&
        clique.alterations.every((each) => allowedAt(each, k) === allowedAt(each, k - 1)) &&
        (k < 3 || clique.parts.every((part) => !part.structural)),
    ),
  };
}

function habitClassesOf(layout: Layout, classes: Classes, part: ModelPart): HabitClasses {
  const { fine, habits, prepared, asked } = layout;
  const signs = asked.get(part.id)?.habits ?? new Set();
  const silent = signs.size === 0 && !fine;
  const bits = bitsOf(habits, signs);
  const heard = prepared.shops.map(
    (shop) =>
      fine ||
      shop.habits.some(
        ({ sign, on }) =>
          signs.has(sign) && (on === undefined || on.includes(part.kind) || habits.includes(sign)),
      ),
  );
  const makingOf = worlds.map((world) => makings.indexOf(world.making));
  const states = 2 ** habits.length;
  const byNumber = new Int32Array((heard.length + 1) * makings.length * states).fill(-1);
  const scenarios: Scenario[] = [];
  const of = new Int32Array(classes.scenarios.length);
  for (let index = 0; index < of.length; index++) {
    const scenario = classes.scenarios[index] as Scenario;
    const shop = heard[scenario.shop - 1] === true ? scenario.shop : 0;
    const made = shop * makings.length + (makingOf[scenario.world] as number);
    const number = silent ? 0 : made * states + (scenario.habits & bits);
    if (byNumber[number] === -1) {
      byNumber[number] = scenarios.length;
      scenarios.push(scenario);
    }
    of[index] = byNumber[number] as number;
  }
  const name = scenarios.map(({ world, shop, habits: shown }) => `${world}.${shop}.${shown}`).join();
  return { name, of, scenarios };
}
