import { type ClassSums, classSums } from './classSums.ts';
import { type Classes, columnClasses } from './columnClasses.ts';
import { type Factor, multiplyUnit, ones, priorFactor, times, timesUnit } from './factor.ts';
import { isIdle, withIdle, withoutIdle } from './idleUnits.ts';
import { fixModel, type Model, type Unit } from './model.ts';
import type { Look } from './prepareCase.ts';
import { type Masses, massesOf } from './readingMasses.ts';
import { unitLines } from './unitLines.ts';

/**
 * What all the rest of the model says to one part: the whole is then a sum over the part's own ways alone, so that a
 * look at it can be added or taken away, or its origin asked for, at the cost of the part itself.
 *
 * `unchanged` meets the part’s factor where no timed alteration changed it, laid out as unit lines are, by the classes that
 * the part’s own looks tell apart. Each entry of
 * `changes` meets the years of a change by one alteration together with one set of other parts: `slots` by bin of the
 * making, `line` by year of the change. True values are these times e^log.
 */
export type PartMessage = {
  unitIndex: number;
  partIndex: number;
  classes: Classes;
  unchanged: Float64Array;
  changes: { alteration: number; slots: Float64Array[]; line: Float64Array }[];
  log: number;
};

/**
 * The whole model evaluated once, kept so that one unit can be changed without the others being summed again: the
 * product of the prior and all other units, for each unit.
 */
export type Evaluation = {
  model: Model;
  looks: readonly Look[];
  /** Use `restOf`: the rests of idle units are not kept. */
  rests: (Factor | undefined)[];
  whole: Factor;
  masses: Masses;
  /** Rests already summed over classes, by unit and class key. */
  restSums: Map<string, ClassSums>;
  /** Messages to parts already worked out, by part and class key. */
  messages: Map<string, PartMessage>;
};

/** Evaluates the model for the given looks. */
export function evaluate(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Evaluation {
  const { layout } = model;
  const active = layout.units.flatMap((unit, u) => (isIdle(unit, looks) ? [] : [u]));
  const lines = active.map((u) => {
    const unit = layout.units[u] as Unit;
    const classes = columnClasses(layout, unit, looks);
    return { classes, unit: unitLines(model, unit, classes, looks) };
  });
  const prefixes: Factor[] = [withIdle(model, priorFactor(model), looks)];
  lines.forEach(({ classes, unit }, i) => {
    prefixes.push(timesUnit(layout, prefixes[i] as Factor, classes, unit));
  });
  const rests: (Factor | undefined)[] = layout.units.map(() => undefined);
  let suffix = ones(layout);
  for (let i = lines.length - 1; i >= 0; i--) {
    const each = lines[i] as (typeof lines)[number];
    const prefix = prefixes[i] as Factor;
    rests[active[i] as number] = i === lines.length - 1 ? prefix : times(prefix, suffix);
    if (i > 0) suffix = timesUnit(layout, suffix, each.classes, each.unit);
  }
  const whole = prefixes[lines.length] as Factor;
  return {
    model,
    looks,
    rests,
    whole,
    masses: massesOf(layout, whole),
    restSums: new Map(),
    messages: new Map(),
  };
}

/** The masses alone, for those who change nothing afterwards. */
export function massesFor(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Masses {
  const { layout } = model;
  const whole = withIdle(model, priorFactor(model), looks);
  for (const unit of layout.units) {
    if (isIdle(unit, looks)) continue;
    const classes = columnClasses(layout, unit, looks);
    const { sums, log } = multiplyUnit(layout, whole, classes, unitLines(model, unit, classes, looks));
    whole.sums = sums;
    whole.log = log;
  }
  return massesOf(layout, whole);
}

/** The product of the prior and all units but one. */
export function restOf(evaluation: Evaluation, unitIndex: number): Factor {
  const { model, whole } = evaluation;
  const kept = evaluation.rests[unitIndex];
  if (kept !== undefined) return kept;
  const unit = model.layout.units[unitIndex];
  if (unit === undefined) throw new RangeError(`no unit ${unitIndex} in this evaluation`);
  return withoutIdle(model, whole, unit);
}

/** The rest of a unit summed over the given classes; each is summed once. */
export function restSumsOf(evaluation: Evaluation, unitIndex: number, classes: Classes): ClassSums {
  const key = `${unitIndex} ${classes.key}`;
  const known = evaluation.restSums.get(key);
  if (known !== undefined) return known;
  const sums = classSums(evaluation.model.layout, restOf(evaluation, unitIndex), classes);
  evaluation.restSums.set(key, sums);
  return sums;
}

/** The same model with no looks at all: what is believed before the examination. */
export function bareEvaluation(evaluation: Evaluation): Evaluation {
  return evaluate(fixModel(evaluation.model.layout, evaluation.model.draw, []), []);
}
