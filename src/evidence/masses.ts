import { type ReadingId, readingIds } from '../piece/readings.ts';
import { isIdle, withIdle, withoutIdle } from './idleUnits.ts';
import { allowedAt, type ColumnCells, fixModel, type Layout, type Model, type Unit } from './model.ts';
import type { Look } from './prepareCase.ts';
import { type Factor, type Only, scaled, unitFactor } from './unitFactor.ts';
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
};

/** Evaluates the model for the given looks. */
export function evaluate(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Evaluation {
  const { units } = model.layout;
  const active = units.flatMap((unit, u) => (isIdle(unit, looks) ? [] : [u]));
  const factors = active.map((u) => unitFactor(model, units[u] as Unit, looks));
  const prefixes: Factor[] = [withIdle(model, priorFactor(model), looks)];
  factors.forEach((factor, i) => {
    prefixes.push(times(prefixes[i] as Factor, factor));
  });
  const rests: (Factor | undefined)[] = units.map(() => undefined);
  let suffix: Factor | undefined;
  for (let i = factors.length - 1; i >= 0; i--) {
    const prefix = prefixes[i] as Factor;
    rests[active[i] as number] = suffix === undefined ? prefix : times(prefix, suffix);
    const factor = factors[i] as Factor;
    suffix = suffix === undefined ? factor : times(factor, suffix);
  }
  const whole = prefixes[factors.length] as Factor;
  return { model, looks, rests, whole, masses: massesOf(model.layout, whole) };
}

/** The masses alone, for those who change nothing afterwards. */
export function massesFor(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Masses {
  let whole = withIdle(model, priorFactor(model), looks);
  for (const unit of model.layout.units)
    if (!isIdle(unit, looks)) whole = times(whole, unitFactor(model, unit, looks));
  return massesOf(model.layout, whole);
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
  return massesOf(evaluation.model.layout, wholeWith(evaluation, unitIndex, looks, only));
}

/** The whole product with one unit's looks or a restriction of it put in the place of its own. */
export function wholeWith(
  evaluation: Evaluation,
  unitIndex: number,
  looks: readonly Look[],
  only?: Only,
): Factor {
  const rest = restOf(evaluation, unitIndex);
  const unit = evaluation.model.layout.units[unitIndex] as Unit;
  return times(rest, unitFactor(evaluation.model, unit, looks, only), false);
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

/** The prior alone, as a factor. */
function priorFactor(model: Model): Factor {
  const { configs, cellCount, periodCellCount, makeUps } = model.layout;
  const strict = () => new Float64Array(configs.length * periodCellCount);
  const sums = [model.prior.slice(), strict(), strict(), strict()];
  configs.forEach((config, m) => {
    const period = model.prior.subarray(m * cellCount, m * cellCount + periodCellCount);
    for (let k = 1; k < 4; k++) {
      if (makeUps.every((each, a) => config.happened[a] !== true || allowedAt(each, k)))
        sums[k]?.set(period, m * periodCellCount);
    }
  });
  return scaled({ sums, log: 0 });
}

/** Two factors multiplied cell by cell, held so that the largest value is 1 unless told not to. */
function times(a: Factor, b: Factor, rescale = true): Factor {
  const sums = a.sums.map((sum, k) => {
    const other = b.sums[k] as Float64Array;
    const product = new Float64Array(sum.length);
    for (let i = 0; i < product.length; i++) product[i] = (sum[i] as number) * (other[i] as number);
    return product;
  });
  const factor = { sums, log: a.log + b.log };
  return rescale ? scaled(factor) : factor;
}

/** Sums a whole product into the readings. */
export function massesOf(layout: Layout, whole: Factor): Masses {
  const byMaking = massByMaking(layout, whole);
  const sum = (k: number) => (whole.sums[k] as Float64Array).reduce((total, each) => total + each, 0);
  const notMadeUp = sum(1);
  const notAltered = sum(2);
  const intact = sum(3);
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
  return { readings, total: readingIds.reduce((total, id) => total + readings[id], 0), log: whole.log };
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
