import { readFile } from 'node:fs/promises';
import { beforeAll, expect, test } from 'vitest';
import { countWoods, type WoodRecord } from '../../scripts/knowledge/countWoods.ts';
import { figuresOf } from '../../src/knowledge/figuresOf.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

type Reference = {
  sources: Record<string, { licence: string }>;
  records: (WoodRecord & { source: string; object: string; years?: [number, number] })[];
};
let reference: Reference;
let knowledge: Knowledge | undefined;
beforeAll(async () => {
  reference = JSON.parse(await readFile('test/reference/museum-woods.json', 'utf8'));
  knowledge = await houseKnowledge();
}, 60_000);

test('every count in knowledge is what the records give, and none stands beside them', () => {
  const counted = countWoods(reference.records);
  const written = Object.values(knowledge?.shops ?? {}).flatMap((shop) =>
    shop.habits.flatMap(({ sign, shows: { counts } }) =>
      counts === undefined
        ? []
        : [{ shop: shop.id, sign, seen: counts.seen, of: counts.of, source: counts.source }],
    ),
  );
  expect(written).toEqual(
    written.map(({ shop, sign }) => ({ shop, sign, ...counted[shop]?.[sign], source: 'museum-woods' })),
  );
  const anywhere = [
    knowledge?.signs,
    knowledge?.forms,
    knowledge?.alterations,
    knowledge?.shops,
    knowledge?.making,
  ];
  const all = anywhere.flatMap((table) => figuresOf({ ...table }));
  expect(all.filter(({ figure }) => figure.counts !== undefined)).toHaveLength(written.length);
  expect(written.length).toBeGreaterThanOrEqual(60);
});

test('a habit of a wood that was counted for its shop carries the count', () => {
  const counted = countWoods(reference.records);
  const without = Object.entries(counted).flatMap(([shop, signs]) =>
    (knowledge?.shops[shop]?.habits ?? [])
      .filter(({ sign, shows }) => signs[sign] !== undefined && shows.counts === undefined)
      .map(({ sign }) => `${shop} ${sign}`),
  );
  expect(without).toEqual([]);
});

test('each object stands once, under a known source, for a shop of its years', () => {
  const { records, sources } = reference;
  expect(new Set(records.map(({ source, object }) => `${source} ${object}`)).size).toBe(records.length);
  const strange = records.filter(({ source, shop, years }) => {
    const span = knowledge?.shops[shop]?.years;
    if (sources[source] === undefined || span === undefined) return true;
    const middle = years === undefined ? span[0] : (years[0] + years[1]) / 2;
    return middle < span[0] || middle > span[1];
  });
  expect(strange).toEqual([]);
});

test('the rules of counting: a loose name is settled by its place or left out', () => {
  const five = (shop: string, ...woods: string[]) =>
    countWoods([{ shop, woods }, ...Array.from({ length: 4 }, () => ({ shop, woods: ['chestnut'] }))])[shop];
  expect(five('newport', 'pine')?.['hidden-wood-white-pine']).toEqual({ seen: 1, of: 5 });
  expect(five('charleston', 'pine')?.['hidden-wood-white-pine']).toEqual({ seen: 0, of: 4 });
  expect(five('charleston', 'pine')?.['hidden-wood-yellow-pine']).toEqual({ seen: 0, of: 4 });
  expect(five('paris-guild', 'pine')?.['hidden-wood-red-deal']).toEqual({ seen: 1, of: 5 });
  expect(five('newport', 'poplar')?.['hidden-wood-tulip-poplar']).toEqual({ seen: 0, of: 4 });
  expect(five('philadelphia', 'poplar')?.['hidden-wood-tulip-poplar']).toEqual({ seen: 1, of: 5 });
  expect(five('newport', 'cedar', 'white cedar')?.['hidden-wood-white-cedar']).toEqual({ seen: 1, of: 5 });
  expect(countWoods([{ shop: 'newport', woods: ['pine'] }])).toEqual({});
});
