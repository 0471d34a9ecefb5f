import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

type Answer = [best: number, low: number, high: number];
type Seed = { seen: number; of: number; answer: Answer };

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
let knowledge: Knowledge;
let answers: Record<string, Record<string, Answer>>;
beforeAll(async () => {
  knowledge = await houseKnowledge();
  answers = JSON.parse(await readFile(at('test/reference/elicitation-seeds.json'), 'utf8')).answers;
}, 60_000);

/** What one judge answered of woods that were counted, with the count. */
function seedsOf(judge: string): Seed[] {
  return Object.entries(answers[judge] ?? {}).flatMap(([name, answer]) => {
    const [shop = '', wood] = name.split('/');
    const counts = knowledge.shops[shop]?.habits.find((each) => each.sign === `hidden-wood-${wood}`)?.shows
      .counts;
    return counts === undefined ? [] : [{ ...counts, answer }];
  });
}

/** How probable each count is by an answer: binomial, over a normal curve of the log odds with its 5th and 95th percentile. */
function countsBy({ of, answer: [best, low, high] }: Seed): number[] {
  const odds = (of100: number) => Math.log(of100 / (100 - of100));
  const curve = Array.from({ length: 161 }, (_, step) => {
    const z = -4 + step / 20;
    const share = 1 / (1 + Math.exp(-(odds(best) + (z * (odds(high) - odds(low))) / 3.29)));
    return { share, weight: Math.exp((-z * z) / 2) };
  });
  const whole = curve.reduce((sum, { weight }) => sum + weight, 0);
  let choose = 1;
  return Array.from({ length: of + 1 }, (_, seen) => {
    if (seen > 0) choose *= (of - seen + 1) / seen;
    return curve.reduce(
      (sum, { share, weight }) =>
        sum + ((weight * choose) / whole) * share ** seen * (1 - share) ** (of - seen),
      0,
    );
  });
}

test.each(['A1', 'A2', 'B1', 'B2'])(
  '%s does better on what was counted than knowing nothing, and its ranges hold',
  (judge) => {
    const seeds = seedsOf(judge);
    expect(seeds.length).toBeGreaterThan(50);
    const bits = seeds.map((seed) => Math.log2((countsBy(seed)[seed.seen] ?? 0) * (seed.of + 1)));
    // Measured: 1.64 to 1.78 bits a question over knowing nothing.
    expect(bits.reduce((sum, each) => sum + each, 0) / seeds.length).toBeGreaterThan(1.6);
    const held = seeds.filter((seed) => {
      const by = countsBy(seed);
      const below = by.slice(0, seed.seen).reduce((sum, each) => sum + each, 0) + (by[seed.seen] ?? 0) / 2;
      return below > 0.05 && below < 0.95;
    });
    // Nine in ten were asked for; that they are held is why making.yaml widens no range.
    expect(held.length / seeds.length).toBeGreaterThanOrEqual(0.9);
    expect(knowledge.making.pooling).toMatchObject({ widened: 1, house: 1 });
  },
);

/** Signs written after the judges had been asked: the file's own figures stand alone. */
const addedSince = new Set([
  'hidden-wood-camphor',
  'hidden-wood-poplar-of-europe',
  'hidden-wood-spruce',
  'hidden-wood-sweetgum',
  'seat-wood-sycamore',
]);

test('every judge whose seeds are kept is described, weighs as much as the file, and judged nearly every share of a sign', () => {
  const pooling = knowledge.making.pooling;
  expect(Object.keys(pooling?.judges ?? {})).toEqual(['A', 'B']);
  expect(Object.values(pooling?.judges ?? {}).map(({ weight }) => weight)).toEqual([1, 1]);
  const asked = Object.values(knowledge.signs).filter(({ id }) => !addedSince.has(id));
  const shares = asked.flatMap((sign) => Object.values(sign.shows));
  const judged = shares.filter(({ apart, aside }) => apart?.length === 3 || aside?.length === 2);
  expect(judged.length / shares.length).toBeGreaterThan(0.99);
});
