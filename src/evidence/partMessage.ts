import { changedLine, eachChange, yearMean } from './changedParts.ts';
import { type Classes, columnClasses } from './columnClasses.ts';
import { type Evaluation, type PartMessage, restSumsOf } from './evaluation.ts';
import { allowedAt, type Layout, type Unit } from './model.ts';
import type { Look } from './prepareCase.ts';
import { fillUnchanged } from './readyPart.ts';
import { lineAt, readySum, type Summing } from './unitLines.ts';
import { type Making, worlds } from './worlds.ts';

/** Slots of a message: the four makings, then period work at the three stricter levels. */
export const slotMakings: readonly Making[] = ['period', 'bench-copy', 'machine-copy', 'to-deceive'];
export const slotCount = slotMakings.length + 3;

/** The message to a part, for the classes that the given looks tell apart; each is worked out once. */
export function messageTo(evaluation: Evaluation, partId: string, looks: readonly Look[]): PartMessage {
  const { model } = evaluation;
  const { layout } = model;
  const unitIndex = layout.units.findIndex((unit) => unit.parts.some((part) => part.id === partId));
  const unit = layout.units[unitIndex] as Unit;
  // Looks taken out leave classes finer than need be, which does no harm and keeps one message in use.
  const all = [...evaluation.looks, ...looks];
  const classes = columnClasses(layout, unit, all);
  // The rest is summed apart for all that the unit's looks tell apart; the part then needs only what its own do.
  const part = unit.parts.filter((each) => each.id === partId);
  const own = columnClasses(layout, { parts: part, alterations: [] }, all);
  const key = `${partId} ${classes.key} / ${own.key}`;
  const known = evaluation.messages.get(key);
  if (known !== undefined) return known;
  const message = makeMessage(
    evaluation,
    unitIndex,
    unit.parts.findIndex((part) => part.id === partId),
    classes,
    own,
  );
  evaluation.messages.set(key, message);
  return message;
}

function makeMessage(
  evaluation: Evaluation,
  unitIndex: number,
  partIndex: number,
  classes: Classes,
  own: Classes,
): PartMessage {
  const { model, looks } = evaluation;
  const { layout } = model;
  const unit = layout.units[unitIndex] as Unit;
  const kind = unit.parts[partIndex]?.kind ?? '';
  const others: Unit = { parts: unit.parts.filter((_, p) => p !== partIndex), alterations: unit.alterations };
  const summing = readySum(model, others, classes, looks);
  const rest = restSumsOf(evaluation, unitIndex, classes);
  const unchanged = new Float64Array(lineAt(layout, own, layout.configs.length, 0, 0));
  const bySet = new Map<number, { alteration: number; changed: number; slots: Float64Array[] }>();
  for (let m = 0; m < layout.configs.length; m++) {
    classes.columns.forEach((column, i) => {
      const bins = layout.worldBins[column.world] ?? { first: 0, count: 0 };
      const making = slotMakings.indexOf(worlds[column.world]?.making ?? 'period');
      fillOthers(summing, column.world, i, m);
      for (const [flavour, levels] of levelsOf(making === 0)) {
        const lines = flavour === 'any' ? summing.unchanged : strictLines(summing);
        for (const state of summing.states) {
          const weight = making === 0 ? state.period : state.later;
          const open = levels.filter((k) =>
            state.happened.every(
              (a) => k === 0 || allowedAt(unit.alterations[a] as Unit['alterations'][number], k),
            ),
          );
          if (weight === 0 || open.length === 0) continue;
          eachChange(summing, lines, state.happened, bins.count, ({ changed, product, scale }) => {
            const means = state.happened.map((a) => yearMean(summing, a, changed[a] as number));
            let left = weight * scale;
            state.happened.forEach((a, at) => {
              const share = layout.changeShares[unit.alterations[a]?.id ?? '']?.[kind];
              if (share === undefined) return;
              const setKey = a * 2 ** others.parts.length + (changed[a] as number);
              const set = bySet.get(setKey) ?? {
                alteration: a,
                changed: changed[a] as number,
                slots: emptySlots(layout),
              };
              bySet.set(setKey, set);
              const by = means.filter((_, other) => other !== at);
              for (const k of open)
                addLine(
                  set.slots[k === 0 ? making : slotMakings.length + k - 1] as Float64Array,
                  bins,
                  product,
                  left * share,
                  by,
                  rest.values,
                  lineAt(layout, classes, m, i, k),
                );
              left *= 1 - share;
            });
            for (const k of open) {
              const to = lineAt(layout, own, m, own.of[classes.firstColumns[i] as number] as number, k);
              addAt(unchanged, to, bins, product, left, means, rest.values, lineAt(layout, classes, m, i, k));
            }
          });
        }
      }
    });
  }
  const changes = [...bySet.values()].map(({ alteration, changed, slots }) => ({
    alteration,
    slots,
    line: changedLine(summing, alteration, changed),
  }));
  return {
    unitIndex,
    partIndex,
    classes: own,
    unchanged,
    changes,
    log: rest.log + summing.parts.reduce((sum, part) => sum + part.log, 0),
  };
}

/** Which strictnesses are summed from which lines: the plain ones, and for the intact piece those of the making alone. */
function levelsOf(period: boolean): [flavour: 'any' | 'intact', levels: number[]][] {
  return period
    ? [
        ['any', [0, 1, 2]],
        ['intact', [3]],
      ]
    : [['any', [0]]];
}

function fillOthers(summing: Summing, world: number, classIndex: number, m: number): void {
  const period = worlds[world]?.making === 'period';
  summing.parts.forEach((ready, p) => {
    fillUnchanged(summing.unchanged[p] as Float64Array, summing.model, ready, world, classIndex, m, false);
    if (period && ready.part.structural)
      fillUnchanged(summing.intact[p] as Float64Array, summing.model, ready, world, classIndex, m, true);
  });
}

function strictLines(summing: Summing): Float64Array[] {
  return summing.parts.map(
    (ready, p) => (ready.part.structural ? summing.intact : summing.unchanged)[p] as Float64Array,
  );
}

function emptySlots(layout: Layout): Float64Array[] {
  return Array.from({ length: slotCount }, () => new Float64Array(layout.prepared.axis.bins));
}

type Bins = { first: number; count: number };

/** Adds product × scale × means × rest to a line by bin of the axis. */
function addLine(
  slot: Float64Array,
  bins: Bins,
  product: Float64Array,
  scale: number,
  means: readonly (Float64Array | undefined)[],
  rest: Float64Array,
  at: number,
): void {
  for (let b = 0; b < bins.count; b++) {
    slot[bins.first + b] =
      (slot[bins.first + b] as number) + valueAt(bins, b, product, scale, means) * (rest[at + b] as number);
  }
}

/** The same, into a line of the unit's layout. */
function addAt(
  values: Float64Array,
  at: number,
  bins: Bins,
  product: Float64Array,
  scale: number,
  means: readonly (Float64Array | undefined)[],
  rest: Float64Array,
  restAt: number,
): void {
  for (let b = 0; b < bins.count; b++) {
    values[at + b] =
      (values[at + b] as number) + valueAt(bins, b, product, scale, means) * (rest[restAt + b] as number);
  }
}

function valueAt(
  bins: Bins,
  b: number,
  product: Float64Array,
  scale: number,
  means: readonly (Float64Array | undefined)[],
): number {
  let value = (product[b] as number) * scale;
  for (const mean of means) if (mean !== undefined) value *= mean[bins.first + b] as number;
  return value;
}
