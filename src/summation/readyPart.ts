import type { Look, ModelPart } from '../evidence/preparedCase.ts';
import { saidOf } from './asked.ts';
import type { HabitClasses, Scenario } from './layout.ts';
import type { Model } from './model.ts';
import { meanFrom, renewedByBin, reusedIn } from './ordinaryTerms.ts';
import type { PartContext } from './partContext.ts';
import { type PartTable, partTable } from './partTable.ts';
import { onceIn } from './worked.ts';

/** A part made ready: its table scaled to at most 1, its renewal by year, and the mean of its later years. */
export type ReadyPart = {
  part: ModelPart;
  table: PartTable;
  /** The natural logarithm of what the table was divided by. */
  log: number;
  renewed: Float64Array;
  renewedMean: Float64Array;
  /** By make-up alteration that brings in a later part: the mean over its years. */
  broughtMeans: readonly (Float64Array | undefined)[];
};

/** What a part's factor is where no timed alteration changed it, over a world's bins: `own` times a habit class, plus `rest`. */
export type PartLines = { own: Float64Array; rest: Float64Array };

/** Tabulates a part's looks and readies it for summing. */
export function readyPart(
  model: Model,
  part: ModelPart,
  looks: readonly Look[],
  { name, scenarios }: HabitClasses,
): ReadyPart {
  const key = `${name}: ${part.id} ${saidOf([part], [], looks)}`;
  return onceIn(model.worked, 'part', key, () => makeReady(model, part, looks, scenarios));
}

/** @param scenarios  one for every habit class of the part */
function makeReady(
  model: Model,
  part: ModelPart,
  looks: readonly Look[],
  scenarios: readonly Scenario[],
): ReadyPart {
  const { layout } = model;
  const context = contextOf(model, scenarios);
  const table = partTable(part, looksAt(part, looks), context);
  return {
    part,
    table,
    log: scaleTable(table),
    renewed: renewedByBin(model, part),
    renewedMean: meanFrom(model, table.repair),
    broughtMeans: layout.makeUps.map((each) => {
      const to = each.changes[part.kind]?.to;
      return to === undefined || to === 'other-old' ? undefined : meanFrom(model, table[to]);
    }),
  };
}

/** What a part's looks are tabulated with. */
export function contextOf({ layout, draw, old }: Model, scenarios: readonly Scenario[]): PartContext {
  const { prepared, shares, habits, worldBins } = layout;
  return { prepared, draw, shares, scenarios, habits, old, worldBins };
}

/** The looks at a part that hang on the part itself, not on an alteration. */
export function looksAt(part: ModelPart, looks: readonly Look[]): Look[] {
  return looks.filter((look) => look.part === part.id && !look.sign.hangsOn.startsWith('alteration/'));
}

/**
 * The part's factor where no timed alteration changed it; make-up alterations of the cutset state may have, the last of them
 * foremost.
 *
 * @param intact  counts of its ordinary sources only the part's being of the making
 */
export function fillPartLines(
  { own, rest }: PartLines,
  model: Model,
  ready: ReadyPart,
  world: number,
  cutsetState: number,
  intact: boolean,
): void {
  const { layout } = model;
  const { first, count } = layout.worldBins[world] ?? { first: 0, count: 0 };
  const { table, renewed, renewedMean, part, broughtMeans } = ready;
  const reused = reusedIn(model, part, world);
  const made = table.own[world] as Float64Array;
  const old = intact ? 0 : reused * table.old;
  const later = intact ? 0 : 1 - reused;
  for (let i = 0, bin = first; i < count; i++, bin++) {
    const r = renewed[bin] as number;
    own[i] = (1 - reused) * (1 - r) * (made[bin] as number);
    rest[i] = later * r * (renewedMean[bin] as number) + old;
  }
  for (let a = 0; a < layout.makeUps.length; a++) {
    if (layout.cutsetStates[cutsetState]?.happened[a] !== true) continue;
    const share = layout.changeShares[layout.makeUps[a]?.id ?? '']?.[part.kind];
    if (share === undefined) continue;
    const mean = broughtMeans[a];
    for (let i = 0; i < count; i++) {
      own[i] = (own[i] as number) * (1 - share);
      rest[i] =
        (rest[i] as number) * (1 - share) +
        share * (mean === undefined ? table.old : (mean[first + i] as number));
    }
  }
}

/** Divides a table by its largest value, so that products of many parts stay within range; gives the logarithm of it. */
function scaleTable(table: PartTable): number {
  let habitMax = 0;
  for (const each of table.ownMaking) habitMax = Math.max(habitMax, each);
  const lines = new Set([...table.own, table.repair, table.improve]);
  let max = table.old;
  for (const line of lines) {
    const by = line === table.repair || line === table.improve ? 1 : habitMax;
    for (let i = 0; i < line.length; i++) max = Math.max(max, (line[i] as number) * by);
  }
  if (!(max > 0) || max === 1) return 0;
  for (const line of lines) for (let i = 0; i < line.length; i++) line[i] = (line[i] as number) / max;
  table.old /= max;
  return Math.log(max);
}
