import type { Look } from '../evidence/preparedCase.ts';
import type { Evaluation } from './evaluation.ts';
import type { Bins } from './layout.ts';
import type { PartStand, Seat } from './message.ts';
import { meanFrom } from './ordinaryTerms.ts';
import { type PartHabits, partHabits } from './partHabits.ts';
import { messageTo, sumsOfSlots } from './partMessage.ts';
import { type PartBase, partBase } from './partTable.ts';
import { type Masses, massesFromSums } from './readingMasses.ts';
import { contextOf, looksAt } from './readyPart.ts';
import { slotWeights } from './toldFactor.ts';
import { slotCount, slotOf } from './unitMessage.ts';

/**
 * The masses with other looks at one part, or with its source held fixed.
 *
 * @param looks   all looks; they may differ from the evaluation's at this part only
 * @param source  `own`, `renewed`, `reused` or an alteration's id
 */
export function massesAtPart(
  evaluation: Evaluation,
  partId: string,
  looks: readonly Look[],
  source?: string,
): Masses {
  const stand = standAt(evaluation, partId);
  const { message } = stand;
  const { habits, base } = tablesFor(evaluation, stand, looks);
  if (source === undefined)
    return massesFromSums(
      sumsOfSlots(slotsWith(evaluation, stand, habits, base), message.log, evaluation.model.told),
    );
  const slots = new Float64Array(slotCount);
  if (source === 'own') addOwn(slots, evaluation, stand, habits, base);
  else {
    for (const way of message.later)
      if (way.source === source) addDots(slots, way.byYear, base[way.to], habits.later);
    for (const way of message.old)
      if (way.source === source)
        for (let slot = 0; slot < slotCount; slot++)
          slots[slot] =
            (slots[slot] as number) + habits.old * base.old * sumOf(way.slots[slot] as Float64Array);
  }
  return massesFromSums(sumsOfSlots(slots, message.log, evaluation.model.told));
}

/** The masses by slot with these tables in the place of the part's own. */
export function slotsWith(
  evaluation: Evaluation,
  stand: PartStand,
  habits: PartHabits,
  base: PartBase,
): Float64Array {
  const slots = new Float64Array(slotCount);
  addOwn(slots, evaluation, stand, habits, base);
  for (let slot = 0; slot < slotCount; slot++)
    slots[slot] = (slots[slot] as number) + slotLater(stand, habits, base, slot);
  return slots;
}

/** The mass of one slot where the part came later or from another old piece. */
export function slotLater(
  stand: PartStand,
  habits: Pick<PartHabits, 'later' | 'old'>,
  base: PartBase,
  slot: number,
): number {
  return (
    habits.later * dot(stand.later.repair[slot] as Float64Array, base.repair) +
    habits.later * dot(stand.later.improve[slot] as Float64Array, base.improve) +
    habits.old * base.old * (stand.old[slot] as number)
  );
}

/** The mass by bin of the making, likewise; on the scale of the message. */
export function binsAtPart(evaluation: Evaluation, partId: string, looks: readonly Look[]): Float64Array {
  const stand = standAt(evaluation, partId);
  const { habits, base } = tablesFor(evaluation, stand, looks);
  const counts = slotWeights(evaluation.model.told);
  const bins = ownByBin(evaluation, stand, habits, base);
  for (const way of stand.message.later) {
    for (const { slots, others } of way.byMaking) {
      const own = base[way.to];
      const line = others === undefined ? own : own.map((value, bin) => value * (others[bin] as number));
      addSlots(bins, slots, meanFrom(evaluation.model, line, way.earliest), habits.later, counts);
    }
  }
  const old = new Float64Array(bins.length).fill(base.old * habits.old);
  for (const way of stand.message.old) addSlots(bins, way.slots, old, 1, counts);
  return bins;
}

/** One way a part can have come, and the mass of it by year of the part. */
export type SourceYears = {
  source: string;
  to: 'own' | 'repair' | 'improve' | 'old';
  years: Float64Array;
};

/** A part's sources: for each the mass by year of the part, on one scale; old parts in the style's own years. */
export function sourcesAtPart(evaluation: Evaluation, partId: string): SourceYears[] {
  const { old, layout, told } = evaluation.model;
  // Where something speaks of the reading alone, the stricter levels have to be asked for too.
  const { table, seats, later, old: reused } = messageTo(evaluation, partId, told !== undefined);
  const counts = slotWeights(told);
  const own = new Float64Array(old.length);
  for (const seat of seats)
    addSeat(
      own,
      layout.worldBins[seat.world],
      seat,
      table.own[seat.state]?.[seat.world] as Float64Array,
      counts,
      seat.voice < 0 ? 1 : table.ownMaking[seat.voice],
    );
  return [
    { source: 'own', to: 'own', years: own },
    ...later.map((way): SourceYears => {
      const by = table[way.to];
      const years = sumSlots(way.byYear, counts).map((each, bin) => each * (by[bin] as number));
      return { source: way.source, to: way.to, years };
    }),
    ...reused.map((way): SourceYears => {
      const total = table.old * sumOf(sumSlots(way.slots, counts));
      return { source: way.source, to: 'old', years: old.map((each) => each * total) };
    }),
  ];
}

/** Adds the mass by bin where the part is of the making, for one world. */
function addSeat(
  bins: Float64Array,
  run: Bins | undefined,
  { world, lines }: Seat,
  own: Float64Array,
  counts: readonly number[],
  by = 1,
): void {
  const { first, count } = run ?? { first: 0, count: 0 };
  for (let k = 0; k * count < lines.length; k++) {
    const counted = by * (counts[slotOf(world, k)] as number);
    if (counted === 0) continue;
    for (let i = 0, bin = first; i < count; i++, bin++)
      bins[bin] = (bins[bin] as number) + (lines[k * count + i] as number) * counted * (own[bin] as number);
  }
}

/** A part as it stands in an evaluation; worked out once. */
export function standAt(evaluation: Evaluation, partId: string): PartStand {
  const known = evaluation.worked.known('stand', partId);
  if (known !== undefined) return known;
  const { model, looks } = evaluation;
  const message = messageTo(evaluation, partId);
  const mine = looksAt(message.part, looks);
  const habitLooks = mine.filter(isHabit);
  const otherLooks = mine.filter((look) => !isHabit(look));
  const context = contextOf(model, message.voices.columns, message.part);
  const habits = partHabits(message.part, habitLooks, context);
  const base = partBase(otherLooks, context);
  const total = (to: 'repair' | 'improve') =>
    Array.from({ length: slotCount }, (_, slot) =>
      sumLines(
        message.later.filter((way) => way.to === to).map((way) => way.byYear[slot] as Float64Array),
        model.layout.prepared.axis.bins,
      ),
    );
  const stand: PartStand = {
    message,
    habitLooks,
    otherLooks,
    habits,
    base,
    byWorld: withoutVoices(message.seats, habits),
    dots: message.seats.map((seat) => seatDots(evaluation, seat, base)),
    later: { repair: total('repair'), improve: total('improve') },
    old: Float64Array.from({ length: slotCount }, (_, slot) =>
      message.old.reduce((sum, way) => sum + sumOf(way.slots[slot] as Float64Array), 0),
    ),
  };
  evaluation.worked.keep('stand', partId, stand);
  return stand;
}

function isHabit(look: Look): boolean {
  return look.sign.hangsOn === 'making';
}

/** The tables for other looks at the part; what they leave as it was is not made anew. */
function tablesFor(evaluation: Evaluation, stand: PartStand, looks: readonly Look[]) {
  const { part, voices } = stand.message;
  const mine = looksAt(part, looks);
  const habitLooks = mine.filter(isHabit);
  const otherLooks = mine.filter((look) => !isHabit(look));
  const context = contextOf(evaluation.model, voices.columns, part);
  return {
    habits: areSame(habitLooks, stand.habitLooks) ? stand.habits : partHabits(part, habitLooks, context),
    base: areSame(otherLooks, stand.otherLooks) ? stand.base : partBase(otherLooks, context),
  };
}

function areSame(a: readonly Look[], b: readonly Look[]): boolean {
  return a.length === b.length && a.every((look, index) => look === b[index]);
}

function withoutVoices(seats: readonly Seat[], habits: PartHabits): Seat[] {
  const worlds = new Map<string, Seat>();
  for (const { world, voice, state, lines } of seats) {
    const key = `${world} ${state}`;
    const into = worlds.get(key) ?? { world, voice: -1, state, lines: new Float64Array(lines.length) };
    worlds.set(key, into);
    const by = habits.own[voice] as number;
    for (let i = 0; i < lines.length; i++)
      into.lines[i] = (into.lines[i] as number) + by * (lines[i] as number);
  }
  return [...worlds.values()];
}

/** A seat's lines met with the part's own, by strictness. */
function seatDots({ model }: Evaluation, { world, state, lines }: Seat, base: PartBase): Float64Array {
  const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
  const own = base.own[state]?.[world] as Float64Array;
  const dots = new Float64Array(count === 0 ? 0 : lines.length / count);
  for (let k = 0; k < dots.length; k++) {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += (lines[k * count + i] as number) * (own[first + i] as number);
    dots[k] = sum;
  }
  return dots;
}

/** Adds, by slot, the mass where the part is of the making. */
function addOwn(
  slots: Float64Array,
  evaluation: Evaluation,
  stand: PartStand,
  habits: PartHabits,
  base: PartBase,
): void {
  const add = (world: number, dots: Float64Array, by: number) => {
    for (let k = 0; k < dots.length; k++) {
      const slot = slotOf(world, k);
      slots[slot] = (slots[slot] as number) + (dots[k] as number) * by;
    }
  };
  const { seats } = stand.message;
  if (habits === stand.habits)
    for (const seat of stand.byWorld) add(seat.world, seatDots(evaluation, seat, base), 1);
  else
    seats.forEach((seat, index) => {
      const dots =
        base === stand.base ? (stand.dots[index] as Float64Array) : seatDots(evaluation, seat, base);
      add(seat.world, dots, habits.own[seat.voice] as number);
    });
}

/** The mass by bin where the part is of the making. */
function ownByBin(
  evaluation: Evaluation,
  stand: PartStand,
  habits: PartHabits,
  base: PartBase,
): Float64Array {
  const { layout } = evaluation.model;
  const bins = new Float64Array(layout.prepared.axis.bins);
  const seats = habits === stand.habits ? stand.byWorld : withoutVoices(stand.message.seats, habits);
  const counts = slotWeights(evaluation.model.told);
  for (const seat of seats)
    addSeat(
      bins,
      layout.worldBins[seat.world],
      seat,
      base.own[seat.state]?.[seat.world] as Float64Array,
      counts,
    );
  return bins;
}

function addDots(slots: Float64Array, lines: readonly Float64Array[], line: Float64Array, by: number): void {
  for (let slot = 0; slot < slotCount; slot++)
    slots[slot] = (slots[slot] as number) + by * dot(lines[slot] as Float64Array, line);
}

/** Adds the slots, each by what it counts and times a line. */
function addSlots(
  bins: Float64Array,
  slots: readonly Float64Array[],
  line: Float64Array,
  by: number,
  counts: readonly number[],
): void {
  for (let slot = 0; slot < slots.length; slot++) {
    const each = slots[slot] as Float64Array;
    const counted = by * (counts[slot] as number);
    if (counted === 0) continue;
    for (let b = 0; b < bins.length; b++)
      bins[b] = (bins[b] as number) + counted * (each[b] as number) * (line[b] as number);
  }
}

/** The slots added, each by what it counts; a plain message has one for each kind of piece, which count alike. */
function sumSlots(slots: readonly Float64Array[], counts: readonly number[]): Float64Array {
  const sum = new Float64Array(slots[0]?.length ?? 0);
  slots.forEach((line, slot) => {
    const by = counts[slot] as number;
    if (by !== 0) for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + by * (line[i] as number);
  });
  return sum;
}

function sumLines(lines: readonly Float64Array[], length: number): Float64Array {
  const sum = new Float64Array(length);
  for (const line of lines)
    for (let i = 0; i < length; i++) sum[i] = (sum[i] as number) + (line[i] as number);
  return sum;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function sumOf(line: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < line.length; i++) sum += line[i] as number;
  return sum;
}
