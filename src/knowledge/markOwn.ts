import { ownNamesOnly } from './ownNamesOnly.ts';
import type { Knowledge } from './schema.ts';

/**
 * The knowledge with every entry of the user's own named as such, so that wherever a sign or a shop is named, in a list, a
 * contradiction or a table of weights, a reader sees whose it is. Nothing else changes, no weight either.
 *
 * @param marks  what stands in brackets behind the name of an own sign, and of an own shop
 */
export function markOwn(knowledge: Knowledge, marks: { sign: string; shop: string }): Knowledge {
  return ownNamesOnly({
    ...knowledge,
    signs: marked(knowledge.signs, marks.sign),
    shops: marked(knowledge.shops, marks.shop),
  });
}

function marked<Entry extends { name: string; mine?: boolean }>(
  entries: Record<string, Entry>,
  mark: string,
): Record<string, Entry> {
  if (!Object.values(entries).some((entry) => entry.mine === true)) return entries;
  return Object.fromEntries(
    Object.entries(entries).map(([id, entry]) => [
      id,
      entry.mine === true && !entry.name.endsWith(`(${mark})`)
        ? { ...entry, name: `${entry.name} (${mark})` }
        : entry,
    ]),
  );
}
