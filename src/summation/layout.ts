import type { CauseShares } from '../evidence/causeShares.ts';
import type { ModelPart, PreparedCase } from '../evidence/preparedCase.ts';
import type { Making } from '../evidence/worlds.ts';
import type { Alteration } from '../knowledge/schema.ts';
import type { Asked } from './asked.ts';
import type { GroupPlan } from './groupPlan.ts';
import type { Worked } from './worked.ts';

/**
 * A scenario of the model: a world, the shop (0 = unlisted) that made period work or that a copy is made after, and the state of the piece's shared
 * habits (bit h: the maker's way shows the sign `habits[h]`).
 */
export type Scenario = { world: number; shop: number; habits: number };

/**
 * Parts that must be summed together, given the making, the year, the shop and the make-up alterations: those that one
 * timed alteration can have changed, or one part by itself, or one alteration that changes no part.
 */
export type Clique = { parts: readonly ModelPart[]; alterations: readonly Alteration[] };

/** One state of all make-up alterations: which of them happened. */
export type CutsetState = { happened: readonly boolean[] };

/**
 * Where a scenario's cells lie. Only bins in which a piece of that world and shop can have been made have a cell:
 * bins first … first + count − 1, at offset … offset + count − 1 within each cutset state's block.
 */
export type ScenarioCells = { first: number; count: number; offset: number };

/** A run of bins. */
export type Bins = { first: number; count: number };

/** The layout of the model for one case; the same for every redraw of its figures. */
export type Layout = Frame & {
  prepared: PreparedCase;
  /** By part: what was looked for at it; parts that nothing was looked for on are left out. */
  asked: ReadonlyMap<string, Asked>;
  /** Cliques that something was looked for on, or that can be altered: together where they share a habit. */
  groups: readonly HabitGroup[];
};

/** What of a layout most findings leave as it is: they change what was looked for at their own part alone. */
export type Frame = {
  /** True where everything that a look still to come could tell apart is told apart. */
  fine: boolean;
  /** The worlds and, for period work, the shops; for copies and fakes the shops they are made after. */
  scenarios: readonly Scenario[];
  /** The first so many scenarios are period work. */
  periodScenarios: number;
  /** Signs of the maker's habit looked for on several parts. */
  habits: readonly string[];
  cells: readonly ScenarioCells[];
  /** Cells of one cutset state, and of its period scenarios. */
  cellCount: number;
  periodCellCount: number;
  /** By world: the bins in which it can have been made; and by world and shop, those of that shop within them. */
  worldBins: readonly Bins[];
  shopBins: readonly (readonly Bins[])[];
  /** How probable each bin is for a piece of each making. */
  years: Record<Making, Float64Array>;
  cliques: readonly Clique[];
  /** Alterations that bring in parts of other old pieces: they are conditioned on, all states side by side. */
  makeUps: readonly Alteration[];
  cutsetStates: readonly CutsetState[];
  shares: CauseShares;
  /** By alteration and kind of part: the share of such parts that are then not of the making, 0–1. */
  changeShares: Record<string, Record<string, number>>;
  /** Each by all that it hangs on, as a text: classes of the layout's scenarios, groups, and shapes of cliques. */
  worked: Worked<{ classes: [string, Classes]; group: [string, HabitGroup]; shape: [string, CliqueShape] }>;
};

/** How strict a sum is: all histories · no make-up · no improving either · intact. */
export const levels = ['all', 'not-made-up', 'not-altered', 'intact'] as const;

/** Whether a history with this alteration still counts at a level (index into `levels`). */
export function allowedAt(alteration: Alteration, level: number): boolean {
  const limit = { upkeep: 3, repair: 2, improve: 1, 'make-up': 0 }[alteration.class];
  return level <= limit;
}

/** The strictest level at which a cutset state still counts. */
export function strictest(layout: Pick<Layout, 'makeUps' | 'cutsetStates'>, m: number): number {
  let k = levels.length - 1;
  while (
    k > 0 &&
    layout.makeUps.some((each, a) => layout.cutsetStates[m]?.happened[a] === true && !allowedAt(each, k))
  )
    k--;
  return k;
}

/**
 * Cliques bound together by the maker's shared habits: given world, year, shop and make-up alterations they say all they say
 * of one another through these. `scenarios` holds for every class all states of them, the states of
 * one class side by side (`states` of them).
 */
export type HabitGroup = {
  /** Told by the cliques and what was looked for at their parts. */
  name: string;
  cliques: readonly number[];
  /** Numbers of its habits in the layout; bit h of a state is the h-th of them. */
  habits: readonly number[];
  plan: GroupPlan;
  classes: Classes;
  /** The same for tables without the stricter sums. */
  plain: Classes;
  states: number;
  scenarios: readonly Scenario[];
};

/**
 * Scenarios alike in everything the looks at some parts depend on, put in one class: what is summed for one of them holds
 * for all. `of[scenario]` is the class and `scenarios[class]` stands for it.
 *
 * A table over classes holds, for each, one line after another for its levels (four for period work, else one), each
 * as long as the bins in which it can have been made (`count` from `first` on): line k begins at `at[class] + k · count[class]`, and a
 * table is `size` long.
 */
export type Classes = {
  of: Int32Array;
  scenarios: Scenario[];
  at: Int32Array;
  first: Int32Array;
  count: Int32Array;
  levels: Int32Array;
  size: number;
};

/** Scenarios alike in what one part's looks at the maker's habit depend on: `of` by class of the clique. */
export type HabitClasses = { name: string; of: Int32Array; scenarios: Scenario[] };

/**
 * How a clique is summed for certain looks; the same for every redraw. Parts are told by bits: bit p of a set stands for
 * `parts[p]`. Parts whose looks hang on the maker's habit come first (`withHabits` of them), those that tell most apart before
 * the others.
 */
export type CliqueShape = {
  name: string;
  cliqueIndex: number;
  clique: Clique;
  parts: readonly ModelPart[];
  withHabits: number;
  /** Parts that nothing was looked for on but that bear on whether the piece is intact. */
  idle: readonly ModelPart[];
  classes: Classes;
  /** The same for tables without the stricter sums. */
  plain: Classes;
  habitClasses: readonly HabitClasses[];
  /** By world that stands for classes: the tree from the last part with habits down to the first. */
  trees: readonly HabitClassTree[];
  /** By alteration of the clique: the parts it can change. */
  masks: readonly number[];
  /** By level and alteration: what it can have changed. */
  steps: readonly (readonly ChangeSteps[])[];
  /** By level and number of parts: the sets of the first so many parts that can have been changed, rising. */
  live: readonly (readonly Int32Array[])[];
  /** By cutset state of the layout, the cutset state of this clique; and by the latter, one of the former. */
  cutsetStateOf: Int32Array;
  cutsetStates: readonly number[];
  /** By level: whether it sums the same as the one before, where the cutset state is allowed. */
  same: readonly boolean[];
};

/**
 * The classes of one world, told apart part by part, as a tree laid out in the order in which it is walked: first a root
 * (its part is the number of parts with habits), then every branch before its own branches. A branch is one habit class of one part; from
 * the last part with habits down to the first. `ends` are the classes a way leads to. Of the world's bins only those from `from` to
 * below `to` are asked for.
 */
export type HabitClassTree = {
  world: number;
  parts: Int32Array;
  habitClasses: Int32Array;
  from: Int32Array;
  to: Int32Array;
  ends: readonly (readonly number[] | undefined)[];
  /** By part with habits: the habit classes that come up. */
  asks: readonly (readonly number[])[];
};

/**
 * All ways one alteration can have gone on from the sets of parts that those before it can have changed: from which set, which
 * parts it changed then, and how probable that is if it happened. The figures of these shares are not redrawn.
 */
export type ChangeSteps = { from: Int32Array; changed: Int32Array; ifHappened: Float64Array };
