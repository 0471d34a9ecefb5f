import type { Look, ModelPart } from '../evidence/preparedCase.ts';
import type { HabitClasses } from './layout.ts';
import type { PartHabits } from './partHabits.ts';
import type { PartBase, PartTable } from './partTable.ts';

/**
 * What meets a part's own line in one world and habit class: a line for every level, one after the other. In a plain message
 * the habit classes are summed out as they stand (habit class −1) and there is but one line.
 */
export type MessageRow = { world: number; habitClass: number; lines: Float64Array };

/**
 * What meets what the looks say of a part that came later by one source, by outcome. `byMaking` are lines over the year of the
 * making that meet the mean over the later years from there on (of the product with `others`, where other parts share the
 * year); `byYear` is the same put together over the part's own year.
 */
export type LaterWay = {
  source: string;
  to: 'repair' | 'improve';
  earliest: number;
  byYear: Float64Array[];
  byMaking: { outcomes: Float64Array[]; others: Float64Array | undefined }[];
};

/** What meets what the looks say of a part from another old piece, by outcome and year of the making. */
export type OldWay = { source: string; outcomes: Float64Array[] };

/**
 * What all the rest of the model says to one part: the whole is then a sum over the part's own ways alone, so that a look
 * at it can be added or taken away, or its origin asked for, at the cost of the part itself. True values are e^log times.
 */
export type PartMessage = {
  part: ModelPart;
  /** What the part's own looks say as they stand, by habit class, scaled to at most 1. */
  table: PartTable;
  habitClasses: HabitClasses;
  rows: MessageRow[];
  later: LaterWay[];
  old: OldWay[];
  log: number;
};

/** A part's message met with its own looks as they stand, kept so that looks which change one of them do not ask for both. */
export type PartStand = {
  message: PartMessage;
  habitLooks: readonly Look[];
  otherLooks: readonly Look[];
  habits: PartHabits;
  base: PartBase;
  /** The rows with habit classes summed out as they stand: one for each world. */
  byWorld: readonly MessageRow[];
  /** By row and level, its lines met with the part's own as they stand. */
  dots: readonly Float64Array[];
  /** What meets later lines and the old share, by outcome, all sources together. */
  later: Record<'repair' | 'improve', Float64Array[]>;
  old: Float64Array;
};
