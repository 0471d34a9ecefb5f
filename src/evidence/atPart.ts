import type { Evaluation } from './evaluation.ts';
import { meanFrom } from './ordinaryTerms.ts';
import { messageTo, type PartMessage } from './partMessage.ts';
import type { Look } from './prepareCase.ts';
import { type Masses, massesFromSums, type Sums } from './readingMasses.ts';
import { type ReadyPart, readyPart } from './readyPart.ts';
import { slotCount, slotMakings, slotOf } from './unitMessage.ts';

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
  const { message, ready } = meet(evaluation, partId, looks);
  const { table } = ready;
  const slots = new Float64Array(slotCount);
  const add = (slot: number, value: number) => {
    slots[slot] = (slots[slot] as number) + value;
  };
  if (source === undefined || source === 'own')
    for (const { world, voice, lines } of message.seats) {
      const { first, count } = evaluation.model.layout.worldBins[world] ?? { first: 0, count: 0 };
      const own = table.own[world] as Float64Array;
      for (let k = 0; k * count < lines.length; k++) {
        let sum = 0;
        for (let i = 0; i < count; i++) sum += (lines[k * count + i] as number) * (own[first + i] as number);
        add(slotOf(world, k), sum * (table.ownMaking[voice] as number));
      }
    }
  for (const way of message.later) {
    if (source !== undefined && source !== way.source) continue;
    way.byYear.forEach((line, slot) => {
      add(slot, dot(line, table[way.to]));
    });
  }
  for (const way of message.old) {
    if (source !== undefined && source !== way.source) continue;
    way.slots.forEach((line, slot) => {
      add(slot, table.old * sumOf(line));
    });
  }
  return massesFromSums(sumsOf(slots, message.log + ready.log));
}

/** The mass by bin of the making, likewise, and the logarithm of its scale. */
export function binsAtPart(
  evaluation: Evaluation,
  partId: string,
  looks: readonly Look[],
): { bins: Float64Array; log: number } {
  const { message, ready } = meet(evaluation, partId, looks);
  const { model } = evaluation;
  const { table } = ready;
  const bins = ownByBin(evaluation, message, ready);
  for (const way of message.later) {
    for (const { slots, others } of way.byMaking) {
      const own = table[way.to];
      const line = others === undefined ? own : own.map((value, bin) => value * (others[bin] as number));
      addMakings(bins, slots, meanFrom(model, line, way.earliest));
    }
  }
  const old = new Float64Array(bins.length).fill(table.old);
  for (const way of message.old) addMakings(bins, way.slots, old);
  return { bins, log: message.log + ready.log };
}

/** A part's sources: for each the mass by year of the part, on the scale of e^log; old parts in the style's own years. */
export function sourcesAtPart(
  evaluation: Evaluation,
  partId: string,
): {
  sources: { source: string; to: 'own' | 'repair' | 'improve' | 'old'; years: Float64Array }[];
  log: number;
} {
  const { message, ready } = meet(evaluation, partId, evaluation.looks);
  const { table } = ready;
  const { old } = evaluation.model;
  const later = message.later.map((way) => {
    const line = sumMakings(way.byYear);
    return {
      source: way.source,
      to: way.to,
      years: line.map((each, bin) => each * (table[way.to][bin] as number)),
    };
  });
  const reused = message.old.map((way) => {
    const total = table.old * sumOf(sumMakings(way.slots));
    return { source: way.source, to: 'old' as const, years: old.map((each) => each * total) };
  });
  const own = { source: 'own', to: 'own' as const, years: ownByBin(evaluation, message, ready) };
  return { sources: [own, ...later, ...reused], log: message.log + ready.log };
}

function meet(
  evaluation: Evaluation,
  partId: string,
  looks: readonly Look[],
): { message: PartMessage; ready: ReadyPart } {
  const message = messageTo(evaluation, partId);
  return { message, ready: readyPart(evaluation.model, message.part, looks, message.voices.columns) };
}

/** The mass by bin where the part is of the making. */
function ownByBin(evaluation: Evaluation, message: PartMessage, { table }: ReadyPart): Float64Array {
  const { layout } = evaluation.model;
  const bins = new Float64Array(layout.prepared.axis.bins);
  for (const { world, voice, lines } of message.seats) {
    const { first, count } = layout.worldBins[world] ?? { first: 0, count: 0 };
    const own = table.own[world] as Float64Array;
    const factor = table.ownMaking[voice] as number;
    for (let i = 0, bin = first; i < count; i++, bin++)
      bins[bin] = (bins[bin] as number) + (lines[i] as number) * factor * (own[bin] as number);
  }
  return bins;
}

/** Adds the makings' slots, each times a line. */
function addMakings(bins: Float64Array, slots: readonly Float64Array[], line: Float64Array): void {
  for (let slot = 0; slot < slotMakings.length; slot++) {
    const each = slots[slot] as Float64Array;
    for (let b = 0; b < bins.length; b++)
      bins[b] = (bins[b] as number) + (each[b] as number) * (line[b] as number);
  }
}

function sumMakings(slots: readonly Float64Array[]): Float64Array {
  const [first, ...rest] = slots.slice(0, slotMakings.length);
  return (first as Float64Array).map((each, bin) =>
    rest.reduce((sum, slot) => sum + (slot[bin] as number), each),
  );
}

/** Sums by slot as sums by making and strictness. */
function sumsOf(slots: Float64Array, log: number): Sums {
  const [period = 0, bench = 0, machine = 0, deceive = 0, notMadeUp = 0, notAltered = 0, intact = 0] = slots;
  return {
    byMaking: { period, 'bench-copy': bench, 'machine-copy': machine, 'to-deceive': deceive },
    strict: [notMadeUp, notAltered, intact],
    log,
  };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function sumOf(line: Float64Array): number {
  return line.reduce((sum, each) => sum + each, 0);
}
