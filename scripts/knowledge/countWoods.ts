/** A record of a piece with the woods named beside its show wood. */
export type WoodRecord = { shop: string; woods: readonly string[] };

/** Of how many records that settle it, how many name the wood. */
export type WoodCount = { seen: number; of: number };

/** Shops with fewer records than this are not counted. */
export const fewestRecords = 5;

/**
 * Counts, for every shop with enough records and every sign of a hidden wood, in how many of its records the wood is named.
 *
 * A record whose wording does not settle the wood (pine, poplar or cedar without more) is left out of that count. The rules are
 * those printed in test/reference/museum-woods.json.
 *
 * @returns by shop, then by the sign's id
 */
export function countWoods(records: readonly WoodRecord[]): Record<string, Record<string, WoodCount>> {
  const shops = [...new Set(records.map(({ shop }) => shop))];
  const counted = shops.flatMap((shop) => {
    const own = records.filter((record) => record.shop === shop);
    return own.length < fewestRecords ? [] : [[shop, countsOf(own)] as const];
  });
  return Object.fromEntries(counted);
}

function countsOf(records: readonly WoodRecord[]): Record<string, WoodCount> {
  return Object.fromEntries(
    Object.entries(names).map(([sign, isNamed]) => {
      const settled = records.flatMap((record) => isNamed(record) ?? []);
      return [sign, { seen: settled.filter((named) => named).length, of: settled.length }];
    }),
  );
}

/** Whether a record names the wood of a sign; undefined where its wording does not settle it. */
const names: Record<string, (record: WoodRecord) => boolean | undefined> = {
  'hidden-wood-chestnut': ({ woods }) => woods.includes('chestnut'),
  'hidden-wood-cypress': ({ woods }) => woods.includes('cypress'),
  'hidden-wood-oak': ({ woods }) => woods.includes('oak'),
  'hidden-wood-red-deal': ({ shop, woods }) =>
    woods.includes('red deal') || (europe.has(shop) && woods.includes('pine')),
  'hidden-wood-tulip-poplar': ({ shop, woods }) =>
    named(woods, 'tulip poplar', 'poplar', newEngland.has(shop) ? undefined : true),
  'hidden-wood-white-cedar': ({ woods }) => named(woods, 'white cedar', 'cedar', undefined),
  'hidden-wood-white-pine': ({ shop, woods }) =>
    named(woods, 'white pine', 'pine', north.has(shop) ? true : europe.has(shop) ? false : undefined),
  'hidden-wood-yellow-pine': ({ shop, woods }) =>
    named(woods, 'yellow pine', 'pine', north.has(shop) || europe.has(shop) ? false : undefined),
};

/** By the full name, or by the loose one as `loosely` says. */
function named(woods: readonly string[], name: string, loose: string, loosely: boolean | undefined) {
  if (woods.includes(name)) return true;
  return woods.includes(loose) ? loosely : false;
}

const europe = new Set(['paris-guild']);
const newEngland = new Set(['newport', 'boston-cases', 'boston-tall-clocks', 'salem-essex-county']);
/** Where pine without more is white pine. */
const north = new Set([...newEngland, 'new-york-city']);
