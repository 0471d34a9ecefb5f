import { worlds } from '../evidence/worlds.ts';
import type { CliqueLines } from './cliqueLines.ts';
import type { GroupPlan, PlanState } from './groupPlan.ts';
import type { CliqueShape, HabitGroup } from './layout.ts';
import { type Layout, strictest } from './layout.ts';
import { type Lend, noughts } from './memory.ts';
import type { Model } from './model.ts';
import { habitStateShare } from './partHabits.ts';
import type { ReadyClique } from './readyClique.ts';
import { lineAt } from './scenarioClasses.ts';

/** One clique of a group, summed; its classes are over the group's scenarios. */
export type SummedClique = { shape: CliqueShape; ready: ReadyClique; lines: CliqueLines };

/**
 * What the cliques of a group say together, their shared habits summed out: lines by cutset state, class of the group and
 * level.
 */
export function groupLines(model: Model, group: HabitGroup, cliques: readonly SummedClique[]): CliqueLines {
  const { layout } = model;
  const [only] = cliques;
  if (only !== undefined && cliques.length === 1 && group.states === 1) return only.lines;
  const { cutsetStateOf, cutsetStates } = cutsetStatesOf(layout, cliques);
  const { classes } = group;
  const values = noughts(cutsetStates.length * classes.size);
  const longest = Math.max(...classes.count);
  const rooms = planRooms(group, longest, noughts);
  const shown = habitShares(model, group);
  cutsetStates.forEach((m, cutsetState) => {
    const last = strictest(layout, m);
    for (let each = 0; each < classes.scenarios.length; each++) {
      const count = classes.count[each] as number;
      for (let k = 0; k < (classes.levels[each] as number) && k <= last; k++) {
        const to = lineAt(classes, cutsetState, each, k);
        if (k > 0 && cliques.every((clique) => clique.shape.same[k])) {
          values.copyWithin(to, to - count, to);
          continue;
        }
        runPlan({ group, cliques, shown, rooms }, { m, each, k, count });
        const held = rooms[group.plan.length] as Float64Array;
        for (let i = 0; i < count; i++) values[to + i] = held[i] as number;
      }
    }
  });
  return { values, cutsetStateOf, log: cliques.reduce((sum, clique) => sum + clique.lines.log, 0) };
}

function planRooms(group: HabitGroup, longest: number, lend: Lend): Float64Array[] {
  return [lend(longest).fill(1), ...group.plan.map(({ held }) => lend(held * longest))];
}

/** Which cutset state, class and level is summed, and how long its line is. */
type At = { m: number; each: number; k: number; count: number };

/** What a run over the plan of a group leans on. */
type PlanRun = {
  group: HabitGroup;
  cliques: readonly SummedClique[];
  shown: Float64Array;
  /** By number of steps done: states held × bins. */
  rooms: readonly Float64Array[];
};

/** Multiplies the cliques of a group in the order of its plan, for one cutset state, class and level. */
function runPlan({ group, cliques, shown, rooms }: PlanRun, at: At): void {
  const { count } = at;
  for (let number = 0; number < group.plan.length; number++) {
    const step = group.plan[number] as GroupPlan[number];
    const held = rooms[number] as Float64Array;
    const into = rooms[number + 1] as Float64Array;
    into.fill(0, 0, step.held * count);
    const clique = cliques[step.clique] as SummedClique;
    const line = clique.lines.values;
    for (const state of step.states) {
      const weight = freshWeight(group, shown, state, at.each);
      const from = lineOfState(group, clique, state, at);
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

/** Where a clique's line for a state of the habits begins. */
function lineOfState(
  group: HabitGroup,
  clique: SummedClique,
  state: PlanState,
  { m, each, k }: At,
  classes = clique.shape.classes,
): number {
  const cliqueClass = classes.of[each * group.states + state.whole] as number;
  return lineAt(classes, clique.lines.cutsetStateOf[m] as number, cliqueClass, k);
}

/**
 * For every clique of a group, the sum of all else over its own classes, by its cutset states: the rest of the group is brought in
 * from the group's classes.
 *
 * Method: the plan of `groupLines` run forwards and then backwards (reverse accumulation), so that all cliques cost about
 * three sums.
 *
 * @param rest    by cutset state of the layout and class of the group
 * @param strict  false leaves the stricter sums out: tables are laid out as `plain` classes are
 */
export function cliqueRests(
  model: Model,
  group: HabitGroup,
  rest: Float64Array,
  cliques: readonly SummedClique[],
  strict: boolean,
): Float64Array[] {
  const { layout } = model;
  const { plan } = group;
  const classes = strict ? group.classes : group.plain;
  const [only] = cliques;
  // By itself and with every cutset state its own, a clique has the rest as it is.
  if (
    only !== undefined &&
    cliques.length === 1 &&
    group.states === 1 &&
    only.shape.cutsetStates.length === layout.cutsetStates.length
  )
    return [rest];
  const tables = cliques.map(({ shape }) => (strict ? shape.classes : shape.plain));
  const values = cliques.map(({ shape }, u) => noughts(shape.cutsetStates.length * (tables[u]?.size ?? 0)));
  const longest = Math.max(...classes.count);
  const rooms = planRooms(group, longest, noughts);
  const backs = rooms.map((room) => noughts(room.length));
  const shown = habitShares(model, group);
  layout.cutsetStates.forEach((_, m) => {
    const last = strict ? strictest(layout, m) : 0;
    for (let each = 0; each < classes.scenarios.length; each++) {
      const count = classes.count[each] as number;
      for (let k = 0; k < (classes.levels[each] as number) && k <= last; k++) {
        const at = { m, each, k, count };
        runPlan({ group, cliques, shown, rooms }, at);
        const start = lineAt(classes, m, each, k);
        const end = backs[plan.length] as Float64Array;
        for (let i = 0; i < count; i++) end[i] = rest[start + i] as number;
        for (let number = plan.length - 1; number >= 0; number--) {
          const step = plan[number] as GroupPlan[number];
          const held = rooms[number] as Float64Array;
          const into = backs[number] as Float64Array;
          const back = backs[number + 1] as Float64Array;
          into.fill(0);
          const clique = cliques[step.clique] as SummedClique;
          const line = clique.lines.values;
          const own = values[step.clique] as Float64Array;
          for (const state of step.states) {
            const weight = freshWeight(group, shown, state, each);
            const from = lineOfState(group, clique, state, at);
            const ownAt = lineOfState(group, clique, state, at, tables[step.clique]);
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
  const shares = new Float64Array(classes.scenarios.length * habits.length);
  habits.forEach((habit, h) => {
    const id = model.layout.habits[habit] as string;
    const known = new Map<string, number>();
    classes.scenarios.forEach(({ world, shop }, each) => {
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

/** Cutset states that differ to any of the cliques. */
function cutsetStatesOf(
  layout: Layout,
  cliques: readonly SummedClique[],
): { cutsetStateOf: Int32Array; cutsetStates: number[] } {
  const names = new Map<string, number>();
  const cutsetStates: number[] = [];
  const cutsetStateOf = Int32Array.from(layout.cutsetStates, (_, m) => {
    const name = cliques.map((clique) => clique.lines.cutsetStateOf[m]).join();
    const before = names.get(name);
    if (before !== undefined) return before;
    names.set(name, cutsetStates.length);
    cutsetStates.push(m);
    return cutsetStates.length - 1;
  });
  return { cutsetStateOf, cutsetStates };
}
