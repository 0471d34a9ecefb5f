import type { Look } from '../evidence/preparedCase.ts';
import { timesWeights } from '../evidence/readingWeights.ts';
import { type ClassSums, classSums } from './classSums.ts';
import type { Evaluation } from './evaluation.ts';
import { type Factor, multiplyUnit, ones, priorFactor, times, timesUnit } from './factor.ts';
import { groupLines, type SummedUnit, unitRests } from './groupLines.ts';
import { groupOf } from './habitGroups.ts';
import { withIdle, withoutIdle } from './idleUnits.ts';
import type { Classes, HabitGroup, Layout, UnitShape } from './layout.ts';
import { fixModel, type Model } from './model.ts';
import { type Masses, massesOf } from './readingMasses.ts';
import { readyUnit } from './readyUnit.ts';
import { toldFactor } from './toldFactor.ts';
import { type UnitLines, unitLines } from './unitLines.ts';
import { unitShape } from './unitShape.ts';
import { Worked } from './worked.ts';

/** Evaluates the model for the given looks: those of its case, or fewer, or others of the same signs. */
export function evaluate(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Evaluation {
  const { layout } = model;
  const summed = sumUnits(model, looks);
  const lines = layout.groups.map((group) => linesOf(model, group, summed));
  const product = withIdle(model, priorFactor(model));
  for (const each of factorsOf(layout, lines)) multiplyUnit(layout, product, each.classes, each.lines);
  const whole = toldFactor(layout, product, model.told);
  const masses = massesOf(layout, whole);
  return {
    model,
    looks,
    summed,
    lines,
    product,
    whole,
    masses,
    worked: new Worked(),
  };
}

/** The masses alone, for those who change nothing afterwards. */
export function massesFor(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Masses {
  const { layout } = model;
  const summed = sumUnits(model, looks);
  const whole = withIdle(model, priorFactor(model));
  const lines = layout.groups.map((group) => linesOf(model, group, summed));
  for (const each of factorsOf(layout, lines)) multiplyUnit(layout, whole, each.classes, each.lines);
  return massesOf(layout, toldFactor(layout, whole, model.told));
}

/**
 * The product of the prior and all groups but one.
 *
 * @param strict  false leaves the stricter sums out
 */
export function restOf(evaluation: Evaluation, group: HabitGroup, strict = true): Factor {
  const { model, product } = evaluation;
  const unit = model.layout.units[group.units[0] ?? -1];
  if (unit === undefined) throw new RangeError('no such unit in this evaluation');
  if (!model.layout.groups.includes(group)) return withoutIdle(model, product, unit);
  const table = strict ? 'rest' : 'plainRest';
  const known = evaluation.worked.known(table, group);
  if (known !== undefined) return known;
  fillRests(evaluation, strict);
  return evaluation.worked.known(table, group) ?? restOf(evaluation, group);
}

/** All rests at once: what stands before a group times what stands behind it. */
function fillRests({ model, lines, worked }: Evaluation, strict: boolean): void {
  const { layout } = model;
  const start = withIdle(model, priorFactor(model));
  if (!strict) start.sums.length = 1;
  const factors = strict
    ? layout.groups.map((group, g) => ({ group, classes: group.classes, lines: lines[g] as UnitLines }))
    : factorsOf(layout, lines);
  const prefixes: Factor[] = [start];
  for (const { classes, lines: each } of factors.slice(0, -1))
    prefixes.push(timesUnit(layout, prefixes.at(-1) as Factor, classes, each));
  let suffix = ones(layout, strict);
  for (let g = factors.length - 1; g >= 0; g--) {
    const { group, classes, lines: each } = factors[g] as GroupFactor;
    const prefix = prefixes[g] as Factor;
    if (group !== undefined)
      worked.keep(
        strict ? 'rest' : 'plainRest',
        group,
        g === factors.length - 1 ? prefix : times(prefix, suffix),
      );
    if (g > 0) suffix = timesUnit(layout, suffix, classes, each);
  }
}

/** What a group says; without `group`, what all alterations say together that change no part. */
type GroupFactor = { group: HabitGroup | undefined; classes: Classes; lines: UnitLines };

/** Alterations that change no part tell apart the same columns: they are multiplied before the others and stand first. */
function factorsOf(layout: Layout, lines: readonly UnitLines[]): GroupFactor[] {
  const others: GroupFactor[] = [];
  let partless: GroupFactor | undefined;
  layout.groups.forEach((group, g) => {
    const each = lines[g] as UnitLines;
    const isPartless = group.units.every((u) => layout.units[u]?.parts.length === 0);
    if (!isPartless || (partless !== undefined && partless.classes !== group.classes))
      others.push({ group, classes: group.classes, lines: each });
    else if (partless === undefined)
      partless = {
        group: undefined,
        classes: group.classes,
        lines: { ...each, values: each.values.slice() },
      };
    else {
      const { values } = partless.lines;
      for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) * (each.values[i] as number);
      partless.lines.log += each.log;
    }
  });
  return partless === undefined ? others : [partless, ...others];
}

/**
 * All but one unit, summed over the classes of that unit, by its configs. True values are these times e^log.
 *
 * @param strict  false leaves the stricter sums out: the table is laid out as `plain` classes are
 */
export function restOfUnit(evaluation: Evaluation, shape: UnitShape, strict = true): ClassSums {
  const table = strict ? 'unitRest' : 'plainUnitRest';
  const known = evaluation.worked.known(table, shape.unitIndex);
  if (known !== undefined) return known;
  const { model, summed } = evaluation;
  const group = groupOf(model.layout, shape.unitIndex);
  const rest = classSums(
    model.layout,
    restOf(evaluation, group, strict),
    strict ? group.classes : group.plain,
  );
  const units = group.units.map((u) => summed.get(u) ?? sumUnit(model, u, evaluation.looks));
  const logs = units.reduce((sum, each) => sum + each.lines.log, 0);
  unitRests(model, group, rest.values, units, strict).forEach((values, at) => {
    const log = rest.log + logs - (units[at] as SummedUnit).lines.log;
    evaluation.worked.keep(table, group.units[at] as number, { values, log });
  });
  return evaluation.worked.known(table, shape.unitIndex) as ClassSums;
}

/** The whole product with one unit's looks put in the place of its own. */
export function wholeWith(evaluation: Evaluation, unitIndex: number, looks: readonly Look[]): Factor {
  const { model } = evaluation;
  const { layout } = model;
  const group = groupOf(layout, unitIndex);
  const changed = new Map(evaluation.summed).set(unitIndex, sumUnit(model, unitIndex, looks));
  const product = timesUnit(layout, restOf(evaluation, group), group.classes, linesOf(model, group, changed));
  return toldFactor(layout, product, model.told);
}

const nothingTold = timesWeights([]);

/** The same model with no looks at all: what is believed before the examination. */
export function bareEvaluation(evaluation: Evaluation): Evaluation {
  return evaluate(fixModel(evaluation.model.layout, evaluation.model.draw, [], nothingTold), []);
}

function sumUnits(model: Model, looks: readonly Look[]): Map<number, SummedUnit> {
  return new Map(
    model.layout.groups.flatMap((group) =>
      group.units.map((u) => [u, sumUnit(model, u, looks)] as [number, SummedUnit]),
    ),
  );
}

function sumUnit(model: Model, unitIndex: number, looks: readonly Look[]): SummedUnit {
  const shape = unitShape(model.layout, unitIndex);
  const ready = readyUnit(model, shape, looks);
  return { shape, ready, lines: unitLines(ready) };
}

function linesOf(model: Model, group: HabitGroup, summed: ReadonlyMap<number, SummedUnit>): UnitLines {
  return groupLines(
    model,
    group,
    group.units.map((u) => summed.get(u) as SummedUnit),
  );
}
