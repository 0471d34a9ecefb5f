import type { Look } from '../evidence/preparedCase.ts';
import { worlds } from '../evidence/worlds.ts';
import { saidOf } from './asked.ts';
import { type Changes, changeSums, readyChanges } from './changeSums.ts';
import { type Bins, type CliqueShape, type HabitClasses, strictest } from './layout.ts';
import type { Lend } from './memory.ts';
import type { Model, PieceKind } from './model.ts';
import { renewedByBin, reusedIn } from './ordinaryTerms.ts';
import { fillPartLines, type PartLines, type ReadyPart, readyPart } from './readyPart.ts';
import { onceIn, Worked } from './worked.ts';

/** A clique made ready: its parts' tables and what its alterations can have done. */
export type ReadyClique = {
  /** Told by its shape and its looks. */
  name: string;
  /** One of its frame and draw: ask it for nothing that hangs on other looks. */
  model: Model;
  shape: CliqueShape;
  parts: readonly ReadyPart[];
  changes: Changes;
  /** Weights over sets of changed parts, by kind of making and level. */
  worked: Worked<{ sets: [string, Sets] }>;
  log: number;
};

/** Weights by set of changed parts and bin of the making, and as they stood before each alteration. */
export type Sets = { bins: Bins; sums: Float64Array; before: Float64Array[] };

/** Makes a clique ready to be summed for these looks. */
export function readyClique(model: Model, shape: CliqueShape, looks: readonly Look[]): ReadyClique {
  const { parts, alterations } = shape.clique;
  const name = `${shape.name}: ${saidOf(parts, alterations, looks)}`;
  return onceIn(model.worked, 'ready', name, () => makeReady(model, shape, looks, name));
}

function makeReady(model: Model, shape: CliqueShape, looks: readonly Look[], name: string): ReadyClique {
  const parts = shape.parts.map((part, p) =>
    readyPart(model, part, looks, shape.habitClasses[p] as HabitClasses),
  );
  return {
    name,
    model,
    shape,
    parts,
    changes: readyChanges(model, shape, parts, looks),
    worked: new Worked(),
    log: parts.reduce((sum, part) => sum + part.log, 0),
  };
}

/** The weights over sets of changed parts for a kind of piece; period work at a level. */
export function setsOf(ready: ReadyClique, kind: PieceKind, k: number): Sets {
  const key = `${kind} ${k}`;
  return ready.worked.once('sets', key, () => {
    const bins = binsOf(ready.model, kind === 'period');
    return { bins, ...changeSums(ready.changes, kind, k, bins) };
  });
}

/** All bins in which period work, or later work, can have been made. */
export function binsOf(model: Model, period: boolean): Bins {
  let [first, end] = [Number.POSITIVE_INFINITY, 0];
  model.layout.worldBins.forEach((bins, w) => {
    if ((worlds[w]?.making === 'period') !== period || bins.count === 0) return;
    first = Math.min(first, bins.first);
    end = Math.max(end, bins.first + bins.count);
  });
  return end === 0 ? { first: 0, count: 0 } : { first, count: end - first };
}

/** The levels that a clique sums for a world and one of its cutset states: the rest are nought, or as the one before. */
export function levelsOf({ model, shape }: ReadyClique, world: number, cutsetState: number): number[] {
  if (worlds[world]?.making !== 'period') return [0];
  const last = strictest(model.layout, shape.cutsetStates[cutsetState] ?? 0);
  return [0, 1, 2, 3].filter((k) => k <= last);
}

/** Room for the lines of all parts of a clique. */
export function roomForParts({ shape, model }: ReadyClique, lend: Lend): PartLines[] {
  const longest = Math.max(...model.layout.worldBins.map((bins) => bins.count));
  return shape.parts.map(() => ({ own: lend(longest), rest: lend(longest) }));
}

/** Fills in the lines of all parts for a world, cutset state and level. */
export function fillCliqueLines(
  lines: readonly PartLines[],
  ready: ReadyClique,
  world: number,
  cutsetState: number,
  k: number,
): void {
  const m = ready.shape.cutsetStates[cutsetState] ?? 0;
  ready.parts.forEach((part, p) => {
    fillPartLines(lines[p] as PartLines, ready.model, part, world, m, k === 3 && part.part.structural);
  });
}

/** How probable it is, by bin of a world, that the clique's parts that nothing was looked for on are of the making. */
export function idleOwn({ model, shape }: ReadyClique, world: number): Float64Array | undefined {
  if (shape.idle.length === 0) return undefined;
  const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
  const line = new Float64Array(count).fill(1);
  for (const part of shape.idle) {
    const kept = 1 - reusedIn(model, part, world);
    const renewed = renewedByBin(model, part);
    for (let i = 0; i < count; i++)
      line[i] = (line[i] as number) * kept * (1 - (renewed[first + i] as number));
  }
  return line;
}
