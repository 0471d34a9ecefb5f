import type { Knowledge } from '../../knowledge/schema.ts';
import { familyNames } from '../knowledge/familyNames.ts';
import type { ReferenceSearch } from './referenceSearch.ts';

/** One shelf of the reference books. */
export const shelfIds = ['signs', 'forms', 'alterations', 'shops', 'woods', 'sources'] as const;
export type ShelfId = (typeof shelfIds)[number];

/** An entry as the shelf lists it; `text` is what words are looked for in. */
export type Listed = { id: string; name: string; note: string; text: string };
export type Group = { name: string; entries: Listed[] };

type EntryName = 'sign' | 'form' | 'alteration' | 'shop' | 'wood' | 'source';

/** How a shelf is called, and which word of the address names one of its entries. */
export const shelves: Record<ShelfId, { name: string; one: EntryName }> = {
  signs: { name: 'Signs', one: 'sign' },
  forms: { name: 'Forms', one: 'form' },
  alterations: { name: 'Alterations', one: 'alteration' },
  shops: { name: 'Shops and regions', one: 'shop' },
  woods: { name: 'Woods', one: 'wood' },
  sources: { name: 'Sources', one: 'source' },
};

/** The shelf and entry an address asks for; the signs where it asks for nothing known. */
export function askedFor(search: ReferenceSearch): { shelf: ShelfId; entry: string | undefined } {
  for (const shelf of shelfIds) {
    const entry = search[shelves[shelf].one];
    if (entry !== undefined) return { shelf, entry };
  }
  const shelf = shelfIds.find((id) => id === search.shelf);
  return { shelf: shelf ?? 'signs', entry: undefined };
}

/** What stands on a shelf, in groups, in its order. */
export function shelfGroups(shelf: ShelfId, knowledge: Knowledge): Group[] {
  if (shelf === 'signs') return knowledge.families.map((family) => signGroup(family, knowledge));
  if (shelf === 'alterations') return [{ name: 'Alterations', entries: alterationEntries(knowledge) }];
  if (shelf === 'shops') return shopGroups(knowledge);
  if (shelf === 'forms') return formGroups(knowledge);
  if (shelf === 'woods') return [{ name: 'Woods', entries: woodEntries(knowledge) }];
  return [{ name: 'Works cited', entries: sourceEntries(knowledge) }];
}

/** The groups with only the entries that have all the words; empty groups fall away. */
export function groupsWithWords(groups: readonly Group[], words: string): Group[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return groups
    .map((group) => ({
      name: group.name,
      entries: group.entries.filter((entry) => wanted.every((word) => entry.text.includes(word))),
    }))
    .filter((group) => group.entries.length > 0);
}

/** The entries before and after one in its group, which for a sign is its family. */
export function neighboursOf(groups: readonly Group[], entry: string): { before?: Listed; after?: Listed } {
  const entries = groups.find((group) => group.entries.some((one) => one.id === entry))?.entries ?? [];
  const at = entries.findIndex((one) => one.id === entry);
  const [before, after] = [entries[at - 1], entries[at + 1]];
  return {
    ...(at > 0 && before !== undefined ? { before } : {}),
    ...(at >= 0 && after !== undefined ? { after } : {}),
  };
}

function signGroup(family: Knowledge['families'][number], knowledge: Knowledge): Group {
  const entries = family.signs.flatMap((id) => {
    const sign = knowledge.signs[id];
    if (sign === undefined) return [];
    return [listed(id, sign.name, '', [sign.look, family.name, ...sign.on, ...sign.mistakenFor])];
  });
  return { name: family.name, entries };
}

function alterationEntries(knowledge: Knowledge): Listed[] {
  return Object.values(knowledge.alterations).map((one) =>
    listed(one.id, one.name, '', [one.what, one.tellOwner]),
  );
}

function shopGroups(knowledge: Knowledge): Group[] {
  const shops = Object.values(knowledge.shops);
  const group = (name: string, some: typeof shops): Group => ({
    name,
    entries: some.map((shop) => listed(shop.id, shop.name, shop.place, [shop.what, shop.woods])),
  });
  return [
    group(
      'Your own additions',
      shops.filter((shop) => shop.mine === true),
    ),
    group(
      'From the books',
      shops.filter((shop) => shop.mine !== true && !shop.invented),
    ),
    group(
      'Invented, for the worked examples',
      shops.filter((shop) => shop.mine !== true && shop.invented),
    ),
  ].filter((one) => one.entries.length > 0);
}

function formGroups(knowledge: Knowledge): Group[] {
  const forms = Object.values(knowledge.forms);
  return Object.entries(familyNames)
    .map(([family, name]) => ({
      name,
      entries: forms
        .filter((form) => form.family === family)
        .map((form) => listed(form.id, form.name, '', [form.what, ...form.parts.map((part) => part.name)])),
    }))
    .filter((one) => one.entries.length > 0);
}

function woodEntries(knowledge: Knowledge): Listed[] {
  return Object.values(knowledge.woods).map((wood) =>
    listed(wood.id, wood.name, wood.botanical, [...wood.otherNames, wood.note ?? '']),
  );
}

function sourceEntries(knowledge: Knowledge): Listed[] {
  return Object.values(knowledge.sources)
    .map((work) => listed(work.id, work.title, authorsOf(work), [work.note ?? '', String(work.issued ?? '')]))
    .sort((a, b) => a.name.toLowerCase().localeCompare(b.name.toLowerCase()));
}

function listed(id: string, name: string, note: string, words: readonly string[]): Listed {
  return { id, name, note, text: [name, note, ...words].join(' ').toLowerCase().replaceAll('-', ' ') };
}

/** Who wrote or keeps a work. */
export function authorsOf(work: Knowledge['sources'][string]): string {
  return work.author
    .map((one) => ('literal' in one ? one.literal : [one.given, one.family].filter(Boolean).join(' ')))
    .join(', ');
}
