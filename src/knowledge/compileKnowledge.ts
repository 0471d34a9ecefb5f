import { checks } from './checks/checks.ts';
import { contentHash } from './contentHash.ts';
import { withCounts } from './countedFigure.ts';
import { type Entry, soundEntries } from './entry.ts';
import type { KnowledgeFault } from './knowledgeFault.ts';
import { ownNamesOnly } from './ownNamesOnly.ts';
import type { PartKind } from './partKind.ts';
import { poolJudged } from './poolJudged.ts';
import { type Family, type KnowledgeFile, readEntries } from './readEntries.ts';
import type { Knowledge } from './schema.ts';

/**
 * Turns the knowledge files into typed tables, with every fault at once.
 *
 * @param files every file of the knowledge folder; their order does not matter
 * @returns knowledge: undefined if a file can't be read, a house entry does not fit its shape, or making.yaml is
 *   missing. An entry of the user's own that does not fit is left out, and its fault says so. The other faults leave
 *   the knowledge usable, but not fit to be published.
 */
export function compileKnowledge(files: readonly KnowledgeFile[]): {
  knowledge: Knowledge | undefined;
  faults: KnowledgeFault[];
} {
  const ordered = [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
  const { entries, families, faults } = readEntries(ordered);
  const all = [...faults, ...checks.flatMap((check) => check.find({ entries, families, files: ordered }))];
  all.sort((a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1));
  const broken = faults.some((fault) => !isMine(ordered, fault.file));
  const misshapen = entries.some((entry) => entry.value === undefined && !entry.mine);
  return {
    knowledge: broken || misshapen ? undefined : assemble(ordered, entries, families),
    faults: all,
  };
}

function isMine(files: readonly KnowledgeFile[], path: string): boolean {
  return files.some((file) => file.path === path && (file.mine === true || /(^|\/)mine-[^/]*$/.test(path)));
}

function assemble(
  files: readonly KnowledgeFile[],
  entries: readonly Entry[],
  families: readonly Family[],
): Knowledge | undefined {
  const making = soundEntries(entries, 'making')[0]?.value;
  if (making === undefined) return undefined;
  const signs = soundEntries(entries, 'sign');
  const judged = poolJudged(
    {
      signs: signs.map((entry) => ({ ...entry.value, family: entry.family, ...mineMark(entry) })),
      forms: soundEntries(entries, 'form').map((entry) => entry.value),
      alterations: soundEntries(entries, 'alteration').map((entry) => entry.value),
      shops: soundEntries(entries, 'shop').map((entry) => ({ ...entry.value, ...mineMark(entry) })),
      making,
    },
    entries,
  );
  const read = withCounts(
    {
      signs: byId(judged.signs),
      forms: byId(judged.forms),
      alterations: byId(judged.alterations),
      shops: byId(judged.shops),
      making: judged.making,
    },
    making.counting,
  );
  return ownNamesOnly({
    version: contentHash(files.flatMap((file) => [file.path, file.text])),
    families: [...new Map(families.map((family) => [family.id, family])).values()].map((family) => ({
      id: family.id,
      name: family.name,
      signs: signs.filter((entry) => entry.family === family.id).map((entry) => entry.value.id),
    })),
    ...read,
    asks: byId(soundEntries(entries, 'ask').map((entry) => entry.value)),
    partGroups: groupsOf(soundEntries(entries, 'partKind').map((entry) => entry.value)),
    signDrawings: byId(soundEntries(entries, 'signDrawing').map((entry) => entry.value)),
    signsNotDrawn: byId(soundEntries(entries, 'notDrawn').map((entry) => entry.value)),
    woods: byId(soundEntries(entries, 'wood').map((entry) => entry.value)),
    woodMovement: soundEntries(entries, 'woodMovement')[0]?.value,
    measurements: soundEntries(entries, 'measurements')[0]?.value,
    consumerPrices: soundEntries(entries, 'consumerPrices')[0]?.value,
    sources: byId(soundEntries(entries, 'work').map((entry) => entry.value)),
  });
}

function groupsOf(kinds: readonly PartKind[]): Record<string, string[]> {
  const groups: Record<string, string[]> = {};
  for (const kind of kinds) for (const group of kind.in) groups[group] = [...(groups[group] ?? []), kind.id];
  return groups;
}

function mineMark(entry: Entry): { mine?: boolean } {
  return entry.mine ? { mine: true } : {};
}

function byId<Value extends { id: string }>(values: readonly Value[]): Record<string, Value> {
  return Object.fromEntries(values.map((value) => [value.id, value]));
}
