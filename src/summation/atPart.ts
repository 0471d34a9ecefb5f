import type { Look } from '../evidence/preparedCase.ts';
import { outcomeCount, outcomeOf } from './cliqueMessage.ts';
import type { Evaluation } from './evaluation.ts';
import type { Bins } from './layout.ts';
import { noughts } from './memory.ts';
import type { MessageRow, PartStand } from './message.ts';
import { meanFrom } from './ordinaryTerms.ts';
import { type PartHabits, partHabits } from './partHabits.ts';
import { messageTo, sumsOfOutcomes } from './partMessage.ts';
import { type PartBase, partBase } from './partTable.ts';
import { type Posterior, posteriorFromSums } from './readingPosterior.ts';
import { contextOf, looksAt } from './readyPart.ts';
import { outcomeWeights } from './toldFactor.ts';

/**
 * The posterior with other looks at one part, or with its source held fixed.
 *
 * @param looks   all looks; they may differ from the evaluation's at this part only
 * @param source  `own`, `renewed`, `reused` or an alteration's id
 */
export function posteriorAtPart(
  evaluation: Evaluation,
  partId: string,
  looks: readonly Look[],
  source?: string,
): Posterior {
  const stand = standAt(evaluation, partId);
  const { message } = stand;
  const { habits, base } = tablesFor(evaluation, stand, looks);
  if (source === undefined)
    return posteriorFromSums(
      sumsOfOutcomes(outcomesWith(evaluation, stand, habits, base), message.log, evaluation.model.told),
    );
  const outcomes = new Float64Array(outcomeCount);
  if (source === 'own') addOwn(outcomes, evaluation, stand, habits, base);
  else {
    for (const way of message.later)
      if (way.source === source) addDots(outcomes, way.byYear, base[way.to], habits.later);
    for (const way of message.old)
      if (way.source === source)
        for (let outcome = 0; outcome < outcomeCount; outcome++)
          outcomes[outcome] =
            (outcomes[outcome] as number) +
            habits.old * base.old * sumOf(way.outcomes[outcome] as Float64Array);
  }
  return posteriorFromSums(sumsOfOutcomes(outcomes, message.log, evaluation.model.told));
}

/** The posterior by outcome with these tables in the place of the part's own. */
export function outcomesWith(
  evaluation: Evaluation,
  stand: PartStand,
  habits: PartHabits,
  base: PartBase,
): Float64Array {
  const outcomes = new Float64Array(outcomeCount);
  addOwn(outcomes, evaluation, stand, habits, base);
  for (let outcome = 0; outcome < outcomeCount; outcome++)
    outcomes[outcome] = (outcomes[outcome] as number) + outcomeLater(stand, habits, base, outcome);
  return outcomes;
}

/** The mass of one outcome where the part came later or from another old piece. */
export function outcomeLater(
  stand: PartStand,
  habits: Pick<PartHabits, 'later' | 'old'>,
  base: PartBase,
  outcome: number,
): number {
  return (
    habits.later * dot(stand.later.repair[outcome] as Float64Array, base.repair) +
    habits.later * dot(stand.later.improve[outcome] as Float64Array, base.improve) +
    habits.old * base.old * (stand.old[outcome] as number)
  );
}

/** The mass by bin of the making, likewise; on the scale of the message. */
export function binsAtPart(evaluation: Evaluation, partId: string, looks: readonly Look[]): Float64Array {
  const stand = standAt(evaluation, partId);
  const { habits, base } = tablesFor(evaluation, stand, looks);
  const counts = outcomeWeights(evaluation.model.told);
  const bins = ownByBin(evaluation, stand, habits, base);
  for (const way of stand.message.later) {
    for (const { outcomes, others } of way.byMaking) {
      const own = base[way.to];
      const line = others === undefined ? own : own.map((value, bin) => value * (others[bin] as number));
      addOutcomes(bins, outcomes, meanFrom(evaluation.model, line, way.earliest), habits.later, counts);
    }
  }
  const old = new Float64Array(bins.length).fill(base.old * habits.old);
  for (const way of stand.message.old) addOutcomes(bins, way.outcomes, old, 1, counts);
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
  const { table, rows, later, old: reused } = messageTo(evaluation, partId, told !== undefined);
  const counts = outcomeWeights(told);
  const own = noughts(old.length);
  for (const row of rows)
    addRow(
      own,
      layout.worldBins[row.world],
      row,
      table.own[row.world] as Float64Array,
      counts,
      row.habitClass < 0 ? 1 : table.ownMaking[row.habitClass],
    );
  return [
    { source: 'own', to: 'own', years: own },
    ...later.map((way): SourceYears => {
      const by = table[way.to];
      const years = sumOutcomes(way.byYear, counts);
      for (let bin = 0; bin < years.length; bin++) years[bin] = (years[bin] as number) * (by[bin] as number);
      return { source: way.source, to: way.to, years };
    }),
    ...reused.map((way): SourceYears => {
      const total = table.old * sumOf(sumOutcomes(way.outcomes, counts));
      return { source: way.source, to: 'old', years: old.map((each) => each * total) };
    }),
  ];
}

/** Adds the mass by bin where the part is of the making, for one world. */
function addRow(
  bins: Float64Array,
  run: Bins | undefined,
  { world, lines }: MessageRow,
  own: Float64Array,
  counts: readonly number[],
  by = 1,
): void {
  const { first, count } = run ?? { first: 0, count: 0 };
  for (let k = 0; k * count < lines.length; k++) {
    const counted = by * (counts[outcomeOf(world, k)] as number);
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
  const context = contextOf(model, message.habitClasses.scenarios);
  const habits = partHabits(message.part, habitLooks, context);
  const base = partBase(otherLooks, context);
  const total = (to: 'repair' | 'improve') =>
    Array.from({ length: outcomeCount }, (_, outcome) =>
      sumLines(
        message.later.filter((way) => way.to === to).map((way) => way.byYear[outcome] as Float64Array),
        model.layout.prepared.axis.bins,
      ),
    );
  const stand: PartStand = {
    message,
    habitLooks,
    otherLooks,
    habits,
    base,
    byWorld: withoutHabitClasses(message.rows, habits),
    dots: message.rows.map((row) => rowDots(evaluation, row, base)),
    later: { repair: total('repair'), improve: total('improve') },
    old: Float64Array.from({ length: outcomeCount }, (_, outcome) =>
      message.old.reduce((sum, way) => sum + sumOf(way.outcomes[outcome] as Float64Array), 0),
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
  const { part, habitClasses } = stand.message;
  const mine = looksAt(part, looks);
  const habitLooks = mine.filter(isHabit);
  const otherLooks = mine.filter((look) => !isHabit(look));
  const context = contextOf(evaluation.model, habitClasses.scenarios);
  return {
    habits: areSame(habitLooks, stand.habitLooks) ? stand.habits : partHabits(part, habitLooks, context),
    base: areSame(otherLooks, stand.otherLooks) ? stand.base : partBase(otherLooks, context),
  };
}

function areSame(a: readonly Look[], b: readonly Look[]): boolean {
  return a.length === b.length && a.every((look, index) => look === b[index]);
}

function withoutHabitClasses(rows: readonly MessageRow[], habits: PartHabits): MessageRow[] {
  const worlds = new Map<number, MessageRow>();
  for (const { world, habitClass, lines } of rows) {
    const into = worlds.get(world) ?? { world, habitClass: -1, lines: new Float64Array(lines.length) };
    worlds.set(world, into);
    const by = habits.own[habitClass] as number;
    for (let i = 0; i < lines.length; i++)
      into.lines[i] = (into.lines[i] as number) + by * (lines[i] as number);
  }
  return [...worlds.values()];
}

/** A row's lines met with the part's own, by level. */
function rowDots({ model }: Evaluation, { world, lines }: MessageRow, base: PartBase): Float64Array {
  const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
  const own = base.own[world] as Float64Array;
  const dots = new Float64Array(count === 0 ? 0 : lines.length / count);
  for (let k = 0; k < dots.length; k++) {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += (lines[k * count + i] as number) * (own[first + i] as number);
    dots[k] = sum;
  }
  return dots;
}

/** Adds, by outcome, the mass where the part is of the making. */
function addOwn(
  outcomes: Float64Array,
  evaluation: Evaluation,
  stand: PartStand,
  habits: PartHabits,
  base: PartBase,
): void {
  const add = (world: number, dots: Float64Array, by: number) => {
    for (let k = 0; k < dots.length; k++) {
      const outcome = outcomeOf(world, k);
      outcomes[outcome] = (outcomes[outcome] as number) + (dots[k] as number) * by;
    }
  };
  const { rows } = stand.message;
  if (habits === stand.habits)
    for (const row of stand.byWorld) add(row.world, rowDots(evaluation, row, base), 1);
  else
    rows.forEach((row, index) => {
      const dots = base === stand.base ? (stand.dots[index] as Float64Array) : rowDots(evaluation, row, base);
      add(row.world, dots, habits.own[row.habitClass] as number);
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
  const rows = habits === stand.habits ? stand.byWorld : withoutHabitClasses(stand.message.rows, habits);
  const counts = outcomeWeights(evaluation.model.told);
  for (const row of rows)
    addRow(bins, layout.worldBins[row.world], row, base.own[row.world] as Float64Array, counts);
  return bins;
}

function addDots(
  outcomes: Float64Array,
  lines: readonly Float64Array[],
  line: Float64Array,
  by: number,
): void {
  for (let outcome = 0; outcome < outcomeCount; outcome++)
    outcomes[outcome] = (outcomes[outcome] as number) + by * dot(lines[outcome] as Float64Array, line);
}

/** Adds the outcomes, each by what it counts and times a line. */
function addOutcomes(
  bins: Float64Array,
  outcomes: readonly Float64Array[],
  line: Float64Array,
  by: number,
  counts: readonly number[],
): void {
  for (let outcome = 0; outcome < outcomes.length; outcome++) {
    const each = outcomes[outcome] as Float64Array;
    const counted = by * (counts[outcome] as number);
    if (counted === 0) continue;
    for (let b = 0; b < bins.length; b++)
      bins[b] = (bins[b] as number) + counted * (each[b] as number) * (line[b] as number);
  }
}

/** The outcomes added, each by what it counts; a plain message has one for each kind of piece, which count alike. */
function sumOutcomes(outcomes: readonly Float64Array[], counts: readonly number[]): Float64Array {
  const sum = noughts(outcomes[0]?.length ?? 0);
  outcomes.forEach((line, outcome) => {
    const by = counts[outcome] as number;
    if (by !== 0) for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + by * (line[i] as number);
  });
  return sum;
}

function sumLines(lines: readonly Float64Array[], length: number): Float64Array {
  const sum = noughts(length);
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
