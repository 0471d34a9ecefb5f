import { reportLikelihood } from '../evidence/groupLikelihood.ts';
import type { Look, ModelPart } from '../evidence/preparedCase.ts';
import { inGroups, looksLikelihood, reportOf, shareByYear, shareIn } from '../evidence/signShares.ts';
import { makings, worlds } from '../evidence/worlds.ts';
import { outcomeLater, outcomesWith, standAt } from './atPart.ts';
import { outcomeCount, outcomeOf } from './cliqueMessage.ts';
import type { Evaluation } from './evaluation.ts';
import type { Scenario } from './layout.ts';
import type { PartStand } from './message.ts';
import { habitLikelihood } from './partHabits.ts';
import { sumsOfOutcomes } from './partMessage.ts';
import { causeStates, type Held, partBase } from './partTable.ts';
import { type Posterior, posteriorFromSums } from './readingPosterior.ts';
import { contextOf } from './readyPart.ts';

/**
 * What is believed of one part's causes and of the readings together, all that was seen taken in: from it any further look
 * at the part follows by a few products. Each joint is worked out when it is first asked for.
 */
export type PartJoints = {
  evaluation: Evaluation;
  shown: Map<string, Float64Array>;
  stand: PartStand;
  causes: Map<string, CauseJoint>;
  /** By outcome: the mass by bin of the part's own year. */
  years: Float64Array[] | undefined;
  /** The mass by outcome for each making and shop of a part of the making, for one put in later and for an old one. */
  ways: { own: Map<number, Float64Array>; later: Float64Array; old: Float64Array } | undefined;
};

/** By state of a cause: the mass by outcome without the looks that hang on the cause, and how probable those are. */
type CauseJoint = { looks: readonly Look[]; posterior: Float64Array[]; before: number[] };

/**
 * Opens the joints of a part.
 *
 * @param shown  what signs of the year show by bin, kept from part to part
 */
export function partJoints(
  evaluation: Evaluation,
  part: ModelPart,
  shown = new Map<string, Float64Array>(),
): PartJoints {
  return {
    evaluation,
    shown,
    stand: standAt(evaluation, part.id),
    causes: new Map(),
    years: undefined,
    ways: undefined,
  };
}

/**
 * The posterior with one more look at the part, exactly as summing anew would give them; undefined where the joints do not tell
 * it: for a sign of the year or the habit that is coupled with another look.
 *
 * @param joints  of an evaluation in a fine layout: looks that are still to come tell all worlds and shops apart
 */
export function posteriorWithLook(joints: PartJoints, look: Look): Posterior | undefined {
  const cause = look.sign.hangsOn;
  if (cause.startsWith('alteration/') || isCoupled(joints, look)) return undefined;
  const outcomes =
    cause === 'making'
      ? outcomesWithHabit(joints, look)
      : cause === 'year' || cause === 'part-year'
        ? outcomesWithYear(joints, look)
        : outcomesWithCause(joints, look, cause as Held['cause']);
  return posteriorFromSums(sumsOfOutcomes(outcomes, joints.stand.message.log, joints.evaluation.model.told));
}

/** True if what the look says hangs on another look at the part, or on the maker's way with several parts. */
function isCoupled({ evaluation, stand }: PartJoints, { sign }: Look): boolean {
  const cause = sign.hangsOn;
  // A trace of a campaign hangs on the year of the making, and on the other traces of it on the part.
  if (sign.campaign !== undefined) return true;
  if (cause in causeStates)
    return stand.otherLooks.some((each) => each.sign.hangsOn === cause && each.sign.campaign !== undefined);
  const { looks } = evaluation.model.layout.prepared;
  if (cause === 'making' && looks.some((each) => each.sign.id === sign.id)) return true;
  if (sign.group === undefined) return false;
  return [...stand.habitLooks, ...stand.otherLooks].some((each) => each.sign.group === sign.group);
}

function outcomesWithCause(joints: PartJoints, look: Look, cause: Held['cause']): Float64Array {
  const { draw, layout } = joints.evaluation.model;
  const { making } = layout.prepared.knowledge;
  const { looks, posterior, before } = causeJoint(joints, cause);
  const alone = look.sign.group === undefined || !looks.some((each) => each.sign.group === look.sign.group);
  const groups = alone ? [[look]] : inGroups([...looks, look]);
  const outcomes = new Float64Array(outcomeCount);
  causeStates[cause].forEach((state, index) => {
    const likelihood = looksLikelihood(groups, making, draw, (each) => shareIn(each.sign, state, draw));
    addTimes(
      outcomes,
      posterior[index] as Float64Array,
      likelihood * (alone ? (before[index] as number) : 1),
    );
  });
  return outcomes;
}

function causeJoint(joints: PartJoints, cause: Held['cause']): CauseJoint {
  const known = joints.causes.get(cause);
  if (known !== undefined) return known;
  const { evaluation, stand } = joints;
  const { draw, layout } = evaluation.model;
  const context = contextOf(evaluation.model, stand.message.habitClasses.scenarios);
  const looks = stand.otherLooks.filter((each) => each.sign.hangsOn === cause);
  const others = stand.otherLooks.filter((each) => each.sign.hangsOn !== cause);
  const groups = inGroups(looks);
  const made = {
    looks,
    posterior: causeStates[cause].map((state) =>
      outcomesWith(evaluation, stand, stand.habits, partBase(others, context, { cause, state })),
    ),
    before: causeStates[cause].map((state) =>
      looksLikelihood(groups, layout.prepared.knowledge.making, draw, (each) =>
        shareIn(each.sign, state, draw),
      ),
    ),
  };
  joints.causes.set(cause, made);
  return made;
}

function outcomesWithYear(joints: PartJoints, look: Look): Float64Array {
  const { draw, layout } = joints.evaluation.model;
  const { making } = layout.prepared.knowledge;
  const report = reportOf(look, making, draw);
  joints.years ??= yearJoint(joints);
  const shown = joints.shown.get(look.sign.id) ?? shareByYear(look.sign, layout.prepared.axis, draw);
  joints.shown.set(look.sign.id, shown);
  return Float64Array.from(joints.years, (line) => {
    let sum = 0;
    for (let bin = 0; bin < line.length; bin++)
      sum += (line[bin] as number) * reportLikelihood(shown[bin] as number, report);
    return sum;
  });
}

function yearJoint({ evaluation, stand }: PartJoints): Float64Array[] {
  const { layout } = evaluation.model;
  const { base, habits } = stand;
  const lines = Array.from({ length: outcomeCount }, (_, outcome) => {
    const [repair, improve] = [stand.later.repair[outcome], stand.later.improve[outcome]] as Float64Array[];
    const old = habits.old * (stand.old[outcome] as number);
    return base.oldLine.map(
      (each, bin) =>
        each * old +
        habits.later * (repair?.[bin] as number) * (base.repair[bin] as number) +
        habits.later * (improve?.[bin] as number) * (base.improve[bin] as number),
    );
  });
  for (const { world, lines: row } of stand.byWorld) {
    const { first, count } = layout.worldBins[world] ?? { first: 0, count: 0 };
    const own = base.own[world] as Float64Array;
    for (let k = 0; k * count < row.length; k++) {
      const line = lines[outcomeOf(world, k)] as Float64Array;
      for (let i = 0; i < count; i++)
        line[first + i] =
          (line[first + i] as number) + (row[k * count + i] as number) * (own[first + i] as number);
    }
  }
  return lines;
}

function outcomesWithHabit(joints: PartJoints, look: Look): Float64Array {
  const { evaluation, stand } = joints;
  const { model } = evaluation;
  const { making } = model.layout.prepared.knowledge;
  joints.ways ??= wayJoint(joints);
  const outcomes = new Float64Array(outcomeCount);
  const likelihood = habitLikelihood(
    stand.message.part,
    look,
    contextOf(model, stand.message.habitClasses.scenarios),
  );
  for (const [habitClass, mass] of joints.ways.own)
    addTimes(outcomes, mass, likelihood(stand.message.habitClasses.scenarios[habitClass] as Scenario));
  const report = reportOf(look, making, model.draw);
  const of = (state: string, standIn?: string) =>
    reportLikelihood(shareIn(look.sign, state, model.draw, standIn), report);
  addTimes(outcomes, joints.ways.later, of('later', 'bench-copy'));
  addTimes(outcomes, joints.ways.old, of('period'));
  return outcomes;
}

/** Habit classes that differ in the shared habits alone are alike to a look at another habit: the first of them stands for all. */
function wayJoint({ stand }: PartJoints): NonNullable<PartJoints['ways']> {
  const { scenarios } = stand.message.habitClasses;
  const firsts = new Map<number, number>();
  const own = new Map<number, Float64Array>();
  stand.message.rows.forEach(({ world, habitClass }, index) => {
    const { shop } = scenarios[habitClass] as Scenario;
    const way = shop * makings.length + makings.indexOf(worlds[world]?.making ?? 'period');
    const first = firsts.get(way) ?? habitClass;
    firsts.set(way, first);
    const mass = own.get(first) ?? new Float64Array(outcomeCount);
    own.set(first, mass);
    const dots = stand.dots[index] as Float64Array;
    for (let k = 0; k < dots.length; k++) {
      const outcome = outcomeOf(world, k);
      mass[outcome] =
        (mass[outcome] as number) + (dots[k] as number) * (stand.habits.own[habitClass] as number);
    }
  });
  const { base, habits } = stand;
  const later = Float64Array.from({ length: outcomeCount }, (_, outcome) =>
    outcomeLater(stand, { later: habits.later, old: 0 }, base, outcome),
  );
  return { own, later, old: stand.old.map((each) => each * habits.old * base.old) };
}

function addTimes(into: Float64Array, line: Float64Array, by: number): void {
  for (let i = 0; i < into.length; i++) into[i] = (into[i] as number) + (line[i] as number) * by;
}
