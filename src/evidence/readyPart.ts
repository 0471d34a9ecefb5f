import type { Model } from './model.ts';
import { fillOrdinary, meanFrom, type OrdinarySource, renewedByBin, reusedIn } from './ordinaryTerms.ts';
import { type Column, type PartTable, partTable } from './partTable.ts';
import type { Look, ModelPart } from './prepareCase.ts';

/** One part's source held fixed: an ordinary one, or an alteration by its id. */
export type OnlyPart = { id: string; source: OrdinarySource | string };

/** A part made ready: its table scaled to at most 1, its renewal by year, and what may be chosen for it. */
export type ReadyPart = {
  part: ModelPart;
  table: PartTable;
  looked: boolean;
  /** The natural logarithm of what the table was divided by. */
  log: number;
  renewed: Float64Array;
  renewedMean: Float64Array;
  sources: readonly OrdinarySource[];
  /** The one alteration it must have been changed by, if the sum is restricted so. */
  byAlteration: string | undefined;
  restricted: boolean;
};

const allSources: readonly OrdinarySource[] = ['own', 'renewed', 'reused'];
const ownOnly: readonly OrdinarySource[] = ['own'];
const noSource: readonly OrdinarySource[] = [];

/** Tabulates a part's looks and readies it for summing, restricted to one source if asked. */
export function readyPart(
  model: Model,
  part: ModelPart,
  looks: readonly Look[],
  columns: readonly Column[],
  only?: OnlyPart,
): ReadyPart {
  const { layout, draw, old } = model;
  const mine = looks.filter((look) => look.part === part.id && !look.sign.hangsOn.startsWith('alteration/'));
  const { prepared, shares, habits } = layout;
  const table = partTable(part, mine, {
    prepared,
    draw,
    shares,
    columns,
    habits,
    old,
    worldBins: layout.worldBins,
  });
  const log = scaleTable(table);
  const restriction = only?.id === part.id ? only.source : undefined;
  const ordinary = allSources.find((source) => source === restriction);
  return {
    part,
    table,
    looked: mine.length > 0,
    log,
    renewed: renewedByBin(model, part),
    renewedMean: meanFrom(model, table.repair),
    sources: restriction === undefined ? allSources : ordinary === undefined ? [] : [ordinary],
    byAlteration: restriction !== undefined && ordinary === undefined ? restriction : undefined,
    restricted: restriction !== undefined,
  };
}

/**
 * The part's factor, over its world's bins, when no timed alteration changed it; make-up alterations of this config may
 * have, the last of them foremost. Written into `line`.
 */
export function fillUnchanged(
  line: Float64Array,
  model: Model,
  ready: ReadyPart,
  world: number,
  classIndex: number,
  configIndex: number,
  intact: boolean,
): void {
  const { layout } = model;
  const bins = layout.worldBins[world] ?? { first: 0, count: 0 };
  const sources = intact ? (ready.sources.includes('own') ? ownOnly : noSource) : ready.sources;
  fillOrdinary(line, ready, world, classIndex, reusedIn(model, ready.part, world), sources, bins);
  layout.makeUps.forEach((alteration, a) => {
    const change = alteration.changes[ready.part.kind];
    if (change === undefined || layout.configs[configIndex]?.happened[a] !== true) return;
    const share = layout.changeShares[alteration.id]?.[ready.part.kind] ?? 0;
    const brought = ready.byAlteration === alteration.id || !ready.restricted ? share : 0;
    const { old, repair, improve } = ready.table;
    const later =
      change.to === 'other-old' ? undefined : meanFrom(model, change.to === 'repair' ? repair : improve);
    for (let i = 0; i < bins.count; i++) {
      line[i] =
        (1 - share) * (line[i] as number) +
        brought * (later === undefined ? old : (later[bins.first + i] as number));
    }
  });
}

/** Divides a table by its largest value, so that products of many parts stay within range; gives the logarithm of it. */
function scaleTable(table: PartTable): number {
  const habitMax = Math.max(...table.ownMaking);
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
