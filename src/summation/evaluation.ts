import type { Look } from '../evidence/preparedCase.ts';
import type { ReadingId } from '../piece/readings.ts';
import type { ClassSums } from './classSums.ts';
import type { CliqueLines } from './cliqueLines.ts';
import type { Factor } from './factor.ts';
import type { SummedClique } from './groupLines.ts';
import type { HabitGroup } from './layout.ts';
import type { PartMessage, PartStand } from './message.ts';
import type { Model } from './model.ts';
import type { Posterior, Sums } from './readingPosterior.ts';
import type { Worked } from './worked.ts';

/**
 * The whole model evaluated once, kept so that one part, clique or alteration can be changed without the others being summed
 * again: the product of the prior and all other groups, for each group.
 */
export type Evaluation = {
  model: Model;
  looks: readonly Look[];
  /** By clique; those of idle cliques are not kept. */
  summed: ReadonlyMap<number, SummedClique>;
  /** By group of the layout: what its cliques say together. */
  lines: readonly CliqueLines[];
  /** Of the prior and all groups; and the same with what was seen of the piece as a whole. */
  product: Factor;
  whole: Factor;
  posterior: Posterior;
  worked: Worked<WorkedOut>;
};

/** What is worked out of an evaluation when it is first asked for. In a plain table the stricter sums are left out. */
type WorkedOut = {
  /** Ask `restOf`: the rests of idle cliques are not kept. */
  rest: [HabitGroup, Factor];
  plainRest: [HabitGroup, Factor];
  /** By clique: all but it, summed over its classes. */
  cliqueRest: [number, ClassSums];
  plainCliqueRest: [number, ClassSums];
  /** By part: what all the rest says to it; and that met with the part's own looks. */
  message: [string, PartMessage];
  plainMessage: [string, PartMessage];
  stand: [string, PartStand];
  /** By key of a finding. */
  shopsWithout: [string, ShopsWithout];
  /** By alteration: the sums if it did not happen and if it did, its own looks left out. */
  split: [string, readonly [Sums, Sums]];
};

/** The shops' posterior without one finding, and what brings those with it to the same scale. */
export type ShopsWithout = { posterior: Record<ReadingId, number>[]; scale: number };
