import type { Look, ModelPart } from '../evidence/preparedCase.ts';
import type { Voices } from './layout.ts';
import type { PartHabits } from './partHabits.ts';
import type { PartBase, PartTable } from './partTable.ts';

/**
 * What meets a part's own line in one world, voice and state of the part's campaigns: a line for every strictness, one after the other. In a plain message
 * the voices are summed out as they stand (voice −1) and there is but one line.
 */
export type Seat = { world: number; voice: number; state: number; lines: Float64Array };

/**
 * What meets what the looks say of a part that came later by one source, by slot. `byMaking` are lines over the year of the
 * making that meet the mean over the later years from there on (of the product with `others`, where other parts share the
 * year); `byYear` is the same put together over the part's own year.
 */
export type LaterWay = {
  source: string;
  to: 'repair' | 'improve';
  earliest: number;
  byYear: Float64Array[];
  byMaking: { slots: Float64Array[]; others: Float64Array | undefined }[];
};

/** What meets what the looks say of a part from another old piece, by slot and year of the making. */
export type OldWay = { source: string; slots: Float64Array[] };

/**
 * What all the rest of the model says to one part: the whole is then a sum over the part's own ways alone, so that a look
 * at it can be added or taken away, or its origin asked for, at the cost of the part itself. True values are e^log times.
 */
export type PartMessage = {
  part: ModelPart;
  /** What the part's own looks say as they stand, by voice, scaled to at most 1. */
  table: PartTable;
  voices: Voices;
  seats: Seat[];
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
  /** The seats with voices summed out as they stand: one for each world and state of the part's campaigns. */
  byWorld: readonly Seat[];
  /** By seat and strictness, its lines met with the part's own as they stand. */
  dots: readonly Float64Array[];
  /** What meets later lines and the old share, by slot, all sources together. */
  later: Record<'repair' | 'improve', Float64Array[]>;
  old: Float64Array;
};
