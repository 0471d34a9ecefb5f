import { type ReadingId, readingIds } from '../piece/readings.ts';
import { binsWith, type ClassSums, classSums, type Sums, sumsWith } from './classSums.ts';
import { type Classes, columnClasses } from './columnClasses.ts';
import { type Factor, ones, priorFactor, times, timesUnit } from './factor.ts';
import { isIdle, withIdle, withoutIdle } from './idleUnits.ts';
import { type ColumnCells, fixModel, type Layout, type Model, type Unit } from './model.ts';
import type { Look } from './prepareCase.ts';
import { type Only, unitLines } from './unitLines.ts';
import { type Making, worlds } from './worlds.ts';

/** How much each reading weighs, not yet shared out: true masses are these times e^log. */
export type Masses = { readings: Record<ReadingId, number>; total: number; log: number };

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
  return { model, looks, rests, whole, masses: massesOf(layout, whole), restSums: new Map() };
}

/** The masses alone, for those who change nothing afterwards. */
export function massesFor(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Masses {
  const { layout } = model;
  let whole = withIdle(model, priorFactor(model), looks);
  for (const unit of layout.units) {
    if (isIdle(unit, looks)) continue;
    const classes = columnClasses(layout, unit, looks);
    whole = timesUnit(layout, whole, classes, unitLines(model, unit, classes, looks));
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

/** The masses with one unit's looks (or a restriction of it) put in the place of its own. */
export function massesWith(
  evaluation: Evaluation,
  unitIndex: number,
  looks: readonly Look[],
  only?: Only,
): Masses {
  const { classes, rest, lines } = unitWith(evaluation, unitIndex, looks, only);
  return massesFromSums(sumsWith(evaluation.model.layout, classes, rest, lines));
}

/** The mass by bin of the making with one unit's looks or a restriction of it put in the place of its own. */
export function binsAfter(
  evaluation: Evaluation,
  unitIndex: number,
  looks: readonly Look[],
  only?: Only,
): { bins: Float64Array; log: number } {
  const { classes, rest, lines } = unitWith(evaluation, unitIndex, looks, only);
  return { bins: binsWith(evaluation.model.layout, classes, rest, lines), log: rest.log + lines.log };
}

/** The whole product with one unit's looks put in the place of its own. */
export function wholeWith(evaluation: Evaluation, unitIndex: number, looks: readonly Look[]): Factor {
  const { model } = evaluation;
  const unit = model.layout.units[unitIndex] as Unit;
  const classes = columnClasses(model.layout, unit, looks);
  return timesUnit(
    model.layout,
    restOf(evaluation, unitIndex),
    classes,
    unitLines(model, unit, classes, looks),
  );
}

function unitWith(evaluation: Evaluation, unitIndex: number, looks: readonly Look[], only?: Only) {
  const { model } = evaluation;
  const unit = model.layout.units[unitIndex] as Unit;
  // Looks taken out leave classes finer than need be, which does no harm and keeps one sum of the rest in use.
  const classes = columnClasses(model.layout, unit, [...evaluation.looks, ...looks]);
  const rest = restSumsOf(evaluation, unitIndex, classes);
  return { classes, rest, lines: unitLines(model, unit, classes, looks, only) };
}

/** The unit a look is summed in, or −1 if it hangs on a make-up alteration and so stands in the prior. */
export function unitOfLook(layout: Layout, look: Pick<Look, 'part' | 'sign'>): number {
  const cause = look.sign.hangsOn;
  return cause.startsWith('alteration/')
    ? layout.units.findIndex((unit) => unit.alterations.some((each) => `alteration/${each.id}` === cause))
    : layout.units.findIndex((unit) => unit.parts.some((part) => part.id === look.part));
}

/** The masses after a change of looks anywhere: by the changed unit alone where that suffices, else anew. */
export function massesAfter(
  evaluation: Evaluation,
  look: Pick<Look, 'part' | 'sign'>,
  looks: readonly Look[],
): Masses {
  const unit = unitOfLook(evaluation.model.layout, look);
  if (unit >= 0) return massesWith(evaluation, unit, looks);
  return massesFor(fixModel(evaluation.model.layout, evaluation.model.draw, looks), looks);
}

/** Sums a whole product into the readings. */
export function massesOf(layout: Layout, whole: Factor): Masses {
  const sum = (k: number) => (whole.sums[k] as Float64Array).reduce((total, each) => total + each, 0);
  return massesFromSums({
    byMaking: massByMaking(layout, whole),
    strict: [sum(1), sum(2), sum(3)],
    log: whole.log,
  });
}

/** The readings from the sums by making and strictness. */
function massesFromSums({ byMaking, strict: [notMadeUp, notAltered, intact], log }: Sums): Masses {
  // Differences of nearly equal sums can fall a rounding error below zero.
  const part = (more: number, less: number) => Math.max(0, more - less);
  const readings: Record<ReadingId, number> = {
    'period-intact': intact,
    'period-repaired': part(notAltered, intact),
    'period-altered': part(notMadeUp, notAltered),
    'made-up': part(byMaking.period, notMadeUp),
    'later-bench-copy': byMaking['bench-copy'],
    'later-machine-copy': byMaking['machine-copy'],
    'made-to-deceive': byMaking['to-deceive'],
  };
  return { readings, total: readingIds.reduce((total, id) => total + readings[id], 0), log };
}

function massByMaking(layout: Layout, whole: Factor): Record<Making, number> {
  const mass: Record<Making, number> = { period: 0, 'bench-copy': 0, 'machine-copy': 0, 'to-deceive': 0 };
  const sums = whole.sums[0] as Float64Array;
  for (let m = 0; m < layout.configs.length; m++) {
    layout.columns.forEach((column, c) => {
      const { offset, count } = layout.cells[c] as ColumnCells;
      const at = m * layout.cellCount + offset;
      let total = 0;
      for (let i = at; i < at + count; i++) total += sums[i] as number;
      mass[worlds[column.world]?.making ?? 'period'] += total;
    });
  }
  return mass;
}

/** The readings as probabilities that sum to 1. */
export function shares(masses: Masses): Record<ReadingId, number> {
  return Object.fromEntries(
    readingIds.map((id) => [id, masses.total > 0 ? masses.readings[id] / masses.total : 0]),
  ) as Record<ReadingId, number>;
}

/** The most probable reading; the earlier listed wins a tie. */
export function leadingOf(masses: Masses): ReadingId {
  return readingIds.reduce(
    (best, id) => (masses.readings[id] > masses.readings[best] ? id : best),
    readingIds[0],
  );
}
