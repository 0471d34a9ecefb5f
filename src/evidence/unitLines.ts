import type { Alteration } from '../knowledge/schema.ts';
import { type Changing, fillOverChanges } from './changedParts.ts';
import type { Classes } from './columnClasses.ts';
import {
  allowedAt,
  alterationLikelihood,
  alterationShare,
  type Layout,
  type Model,
  strictnesses,
  type Unit,
} from './model.ts';
import type { Look } from './prepareCase.ts';
import { fillUnchanged, type OnlyPart, readyPart } from './readyPart.ts';
import { worlds } from './worlds.ts';

/** Restricts a unit's sum to one history: an alteration that did or did not happen, or one part's source. */
export type Only = { alteration?: { id: string; happened: boolean }; part?: OnlyPart };

/**
 * What a unit's looks say, its own unknowns summed out: a line over the bins of the world for every config, class and
 * strictness (period work only has the stricter ones), at `lineAt`. True values are these times e^log.
 */
export type UnitLines = { values: Float64Array; log: number };

/** Where the line of a config, class and strictness begins in `values`, and how much room there is for each line. */
export function lineAt(layout: Layout, classes: Classes, m: number, classIndex: number, k: number): number {
  return ((m * classes.columns.length + classIndex) * strictnesses.length + k) * layout.prepared.axis.bins;
}

/** One state of a unit's alterations, and how probable it is with its looks in a period piece and in a later one. */
type State = { happened: number[]; period: number; later: number };

/** What stays the same over all classes and configs of one unit's sum. */
export type Summing = Changing & {
  states: readonly State[];
  /** Room for one line a part: if nothing changed it, and if besides it must be of the making. */
  unchanged: Float64Array[];
  intact: Float64Array[];
  sum: Float64Array;
};

/**
 * Sums a unit exactly over its parts' origins and years and its alterations' states and years.
 *
 * Parts changed by one alteration share its year. The sum over that year is taken once for every set of parts the
 * alteration may have changed, so a cell costs one pass over those sets instead of one over the years.
 *
 * @param classes  of these looks (or of more)
 * @param looks    all looks to count; those that are not of this unit are passed over
 */
export function unitLines(
  model: Model,
  unit: Unit,
  classes: Classes,
  looks: readonly Look[],
  only: Only = {},
): UnitLines {
  const { layout } = model;
  const summing = readySum(model, unit, classes, looks, only);
  const values = new Float64Array(lineAt(layout, classes, layout.configs.length, 0, 0));
  const size = lineAt(layout, classes, 1, 0, 0);
  const untouched = layout.makeUps.every((each) =>
    unit.parts.every((part) => each.changes[part.kind] === undefined),
  );
  layout.configs.forEach((_, m) => {
    // Make-up alterations that bring nothing to these parts leave the first sum as it was.
    if (m > 0 && untouched) values.copyWithin(m * size, 0, size);
    else
      classes.columns.forEach((column, i) => {
        fillClass(values, summing, classes, column.world, i, m);
      });
    for (let i = 0; i < classes.columns.length; i++) clearForbidden(values, layout, classes, i, m);
  });
  return { values, log: summing.parts.reduce((sum, part) => sum + part.log, 0) };
}

/** Makes a unit ready to be summed: its parts' tables and its alterations' states. */
export function readySum(
  model: Model,
  unit: Unit,
  classes: Classes,
  looks: readonly Look[],
  only: Only = {},
): Summing {
  const { bins } = model.layout.prepared.axis;
  const room = (count: number) => Array.from({ length: count }, () => new Float64Array(bins));
  return {
    model,
    parts: unit.parts.map((part) => readyPart(model, part, looks, classes.columns, only.part)),
    alterations: unit.alterations,
    means: unit.alterations.map(() => new Map<number, Float64Array>()),
    states: alterationStates(model, unit, looks, only),
    unchanged: room(unit.parts.length),
    intact: room(unit.parts.length),
    scratch: room(unit.parts.length + 1),
    sum: new Float64Array(bins),
  };
}

/** Fills in the unit's sums of one class and config, at every strictness its alterations allow. */
function fillClass(
  values: Float64Array,
  summing: Summing,
  classes: Classes,
  world: number,
  classIndex: number,
  m: number,
): void {
  const { model, parts, alterations, states, unchanged, intact, sum } = summing;
  const { layout } = model;
  const bins = layout.worldBins[world] ?? { first: 0, count: 0 };
  const period = worlds[world]?.making === 'period';
  parts.forEach((ready, i) => {
    fillUnchanged(unchanged[i] as Float64Array, model, ready, world, classIndex, m, false);
    if (period && ready.part.structural)
      fillUnchanged(intact[i] as Float64Array, model, ready, world, classIndex, m, true);
  });
  const strict = parts.map((ready, i) => (ready.part.structural ? intact : unchanged)[i] as Float64Array);
  const add = (k: number, weight: number) => {
    const at = lineAt(layout, classes, m, classIndex, k);
    for (let i = 0; i < bins.count; i++)
      values[at + i] = (values[at + i] as number) + weight * (sum[i] as number);
  };
  for (const state of states) {
    const weight = period ? state.period : state.later;
    if (weight === 0) continue;
    fillOverChanges(sum, summing, unchanged, state.happened, bins);
    add(0, weight);
    if (!period) continue;
    const allowed = (k: number) => state.happened.every((a) => allowedAt(alterations[a] as Alteration, k));
    for (let k = 1; k < 3; k++) if (allowed(k)) add(k, weight);
    if (!allowed(3)) continue;
    fillOverChanges(sum, summing, strict, state.happened, bins);
    add(3, weight);
  }
}

/** Clears the lines of strictnesses at which the config itself is not allowed. */
function clearForbidden(
  values: Float64Array,
  layout: Layout,
  classes: Classes,
  classIndex: number,
  m: number,
): void {
  for (let k = 1; k < strictnesses.length; k++) {
    if (layout.makeUps.every((each, a) => layout.configs[m]?.happened[a] !== true || allowedAt(each, k)))
      continue;
    const at = lineAt(layout, classes, m, classIndex, k);
    values.fill(0, at, at + layout.prepared.axis.bins);
  }
}

/** All states of the unit's alterations, or those a restriction allows. */
function alterationStates(model: Model, { alterations }: Unit, looks: readonly Look[], only: Only): State[] {
  const ways = alterations.map((alteration) =>
    [false, true].map((happened) => {
      const seen = alterationLikelihood(alteration, happened, looks, model.layout.prepared, model.draw);
      return {
        period: alterationShare(alteration, true, happened, model.draw) * seen,
        later: alterationShare(alteration, false, happened, model.draw) * seen,
      };
    }),
  );
  return Array.from({ length: 2 ** alterations.length }, (_, bits) => {
    const happened = alterations.flatMap((_, a) => (((bits >> a) & 1) === 1 ? [a] : []));
    const weight = (kind: 'period' | 'later') =>
      ways.reduce((total, way, a) => total * (way[happened.includes(a) ? 1 : 0]?.[kind] ?? 1), 1);
    return { happened, period: weight('period'), later: weight('later') };
  }).filter((state) =>
    alterations.every(
      (each, a) => each.id !== only.alteration?.id || state.happened.includes(a) === only.alteration.happened,
    ),
  );
}
