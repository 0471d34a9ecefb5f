import type { Sums } from './classSums.ts';
import type { Evaluation, PartMessage } from './evaluation.ts';
import type { Unit } from './model.ts';
import { meanFrom } from './ordinaryTerms.ts';
import { messageTo, slotMakings } from './partMessage.ts';
import { type Look, nowBin } from './prepareCase.ts';
import { type Masses, massesFromSums } from './readingMasses.ts';
import { fillUnchanged, type ReadyPart, readyPart } from './readyPart.ts';
import { lineAt } from './unitLines.ts';
import { worlds } from './worlds.ts';
import { binOf } from './yearAxis.ts';

/**
 * The masses with other looks at one part, or with its source held fixed.
 *
 * @param looks   all looks; they may differ from the evaluation's at this part only
 * @param source  `own`, `renewed`, `reused` or an alteration's id
 * @param alike   looks that are still to come at this part: what they tell apart is told apart at once, for all of them
 */
export function massesAtPart(
  evaluation: Evaluation,
  partId: string,
  looks: readonly Look[],
  source?: string,
  alike: readonly Look[] = [],
): Masses {
  const { message, ready } = meet(evaluation, partId, looks, source, alike);
  const sums: Sums = {
    byMaking: { period: 0, 'bench-copy': 0, 'machine-copy': 0, 'to-deceive': 0 },
    strict: [0, 0, 0],
    log: message.log + ready.log,
  };
  eachLine(evaluation, message, ready, (world, k, at, line, count) => {
    let sum = 0;
    for (let b = 0; b < count; b++) sum += (message.unchanged[at + b] as number) * (line[b] as number);
    if (k === 0) sums.byMaking[worlds[world]?.making ?? 'period'] += sum;
    else sums.strict[k - 1] = (sums.strict[k - 1] as number) + sum;
  });
  for (const { slots, mean } of changesOf(evaluation, message, ready)) {
    slotMakings.forEach((making, slot) => {
      sums.byMaking[making] += dot(slots[slot] as Float64Array, mean);
    });
    for (let k = 0; k < 3; k++)
      sums.strict[k] = (sums.strict[k] as number) + dot(slots[slotMakings.length + k] as Float64Array, mean);
  }
  return massesFromSums(sums);
}

/** The mass by bin of the making, likewise, and the logarithm of its scale. */
export function binsAtPart(
  evaluation: Evaluation,
  partId: string,
  looks: readonly Look[],
  source?: string,
): { bins: Float64Array; log: number } {
  const { message, ready } = meet(evaluation, partId, looks, source);
  const { layout } = evaluation.model;
  const bins = new Float64Array(layout.prepared.axis.bins);
  eachLine(evaluation, message, ready, (world, k, at, line, count) => {
    if (k > 0) return;
    const first = layout.worldBins[world]?.first ?? 0;
    for (let b = 0; b < count; b++)
      bins[first + b] =
        (bins[first + b] as number) + (message.unchanged[at + b] as number) * (line[b] as number);
  });
  for (const { slots, mean } of changesOf(evaluation, message, ready)) {
    for (let slot = 0; slot < slotMakings.length; slot++) {
      for (let b = 0; b < bins.length; b++)
        bins[b] = (bins[b] as number) + ((slots[slot] as Float64Array)[b] as number) * (mean[b] as number);
    }
  }
  return { bins, log: message.log + ready.log };
}

/** For a part that a timed alteration changed: the mass of every year it may have happened in, likewise. */
export function changeYearsAtPart(
  evaluation: Evaluation,
  partId: string,
  alterationId: string,
): { bins: Float64Array; log: number } {
  const { message, ready } = meet(evaluation, partId, evaluation.looks, alterationId);
  const { layout } = evaluation.model;
  const now = nowBin(layout.prepared);
  const years = new Float64Array(layout.prepared.axis.bins);
  for (const { slots, line, earliest } of changesOf(evaluation, message, ready)) {
    let before = 0;
    for (let bin = 0; bin <= now; bin++) {
      let made = 0;
      for (let slot = 0; slot < slotMakings.length; slot++)
        made += (slots[slot] as Float64Array)[bin] as number;
      before += made / (now - Math.max(bin, Math.min(earliest, now)) + 1);
      if (bin >= earliest) years[bin] = (years[bin] as number) + before * (line[bin] as number);
    }
  }
  return { bins: years, log: message.log + ready.log };
}

function meet(
  evaluation: Evaluation,
  partId: string,
  looks: readonly Look[],
  source: string | undefined,
  alike: readonly Look[] = [],
): { message: PartMessage; ready: ReadyPart } {
  const { model } = evaluation;
  const message = messageTo(evaluation, partId, [...looks, ...alike]);
  const part = (model.layout.units[message.unitIndex] as Unit).parts[message.partIndex];
  if (part === undefined) throw new RangeError(`no part ${partId} in this evaluation`);
  const ready = readyPart(
    model,
    part,
    looks,
    message.classes.columns,
    source === undefined ? undefined : { id: partId, source },
  );
  return { message, ready };
}

/** Calls back with the part's own factor for every config, class and strictness where nothing timed changed it. */
function eachLine(
  evaluation: Evaluation,
  message: PartMessage,
  ready: ReadyPart,
  visit: (world: number, k: number, at: number, line: Float64Array, count: number) => void,
): void {
  const { layout } = evaluation.model;
  const any = new Float64Array(layout.prepared.axis.bins);
  const intact = new Float64Array(layout.prepared.axis.bins);
  layout.configs.forEach((_, m) => {
    message.classes.columns.forEach(({ world }, i) => {
      const { count } = layout.worldBins[world] ?? { count: 0 };
      const at = (k: number) => lineAt(layout, message.classes, m, i, k);
      fillUnchanged(any, evaluation.model, ready, world, i, m, false);
      visit(world, 0, at(0), any, count);
      if (worlds[world]?.making !== 'period') return;
      visit(world, 1, at(1), any, count);
      visit(world, 2, at(2), any, count);
      if (ready.part.structural) fillUnchanged(intact, evaluation.model, ready, world, i, m, true);
      visit(world, 3, at(3), ready.part.structural ? intact : any, count);
    });
  });
}

/** The ways the part can have been changed, each with what is said of the year of it and its mean over the years. */
function changesOf(evaluation: Evaluation, message: PartMessage, ready: ReadyPart) {
  const { layout } = evaluation.model;
  const { alterations } = layout.units[message.unitIndex] as Unit;
  return message.changes.flatMap(({ alteration, slots, line: others }) => {
    const each = alterations[alteration];
    if (each === undefined || (ready.restricted && ready.byAlteration !== each.id)) return [];
    const own = each.changes[ready.part.kind]?.to === 'improve' ? ready.table.improve : ready.table.repair;
    const line = own.map((value, bin) => value * (others[bin] as number));
    const earliest = each.earliest === undefined ? 0 : binOf(layout.prepared.axis, each.earliest);
    return [{ slots, line, earliest, mean: meanFrom(evaluation.model, line, earliest) }];
  });
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
