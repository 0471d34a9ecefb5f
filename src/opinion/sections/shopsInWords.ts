import { isProvisional, provisionalWords } from '../../knowledge/isProvisional.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { WhoWorked } from '../../knowledge/whoWorkedSchema.ts';
import { areWorkersUnknown, workersUnknownWords } from '../../knowledge/workersUnknown.ts';
import { shopName } from '../wording.ts';

/** What must be said beside a shop that a document names: that its file is provisional, and whose hands did its work or that this is not known. */
export function shopsInWords(ids: readonly string[], { shops, sources }: Knowledge): string[] {
  return ids.flatMap((id) => {
    const shop = shops[id];
    if (shop === undefined) return [];
    const said = [
      ...(isProvisional(shop) ? [provisionalWords] : []),
      ...(shop.whoWorked === undefined ? [] : [told(shop.whoWorked, sources)]),
      ...(areWorkersUnknown(shop) ? [workersUnknownWords] : []),
    ];
    return said.length === 0 ? [] : [`${shopName(shop)}: ${said.join(' ')}`];
  });
}

function told({ words, sources, at, by }: WhoWorked, works: Knowledge['sources']): string {
  const titles = sources.flatMap((id) => works[id]?.title ?? []).map((title) => `“${title}”`);
  return `${words} (${[...titles, at, by].filter((each) => each !== undefined).join('; ')})`;
}
