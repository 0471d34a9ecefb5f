import fc from 'fast-check';
import { sum } from '../../src/ground/statistics.ts';
import type { Evidence, Network } from '../../src/inference/network.ts';

/** Small random networks with evidence: 1–5 unknowns, 1–3 states each, up to 3 givens, some certain rows. */
export const anyNetwork: fc.Arbitrary<{ network: Network; evidence: Evidence }> = fc
  .array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 5 })
  .chain((sizes) =>
    fc.record({
      sizes: fc.constant(sizes),
      links: fc.array(fc.boolean(), { minLength: sizes.length ** 2, maxLength: sizes.length ** 2 }),
      weights: fc.array(fc.nat(9), { minLength: 300, maxLength: 300 }),
      shuffle: fc.shuffledSubarray([...sizes.keys()], { minLength: sizes.length, maxLength: sizes.length }),
      hard: fc.array(fc.option(fc.nat(2), { freq: 2 }), { minLength: sizes.length, maxLength: sizes.length }),
      soft: fc.array(fc.option(fc.array(fc.nat(4), { minLength: 3, maxLength: 3 }), { freq: 2 }), {
        minLength: sizes.length,
        maxLength: sizes.length,
      }),
    }),
  )
  .map(({ sizes, links, weights, shuffle, hard, soft }) => {
    const states = sizes.map((size) => Array.from({ length: size }, (_, state) => `s${state}`));
    let next = 0;
    const tables = sizes.map((size, index) => {
      const given = [...sizes.keys()]
        .filter((other) => other < index && links[index * sizes.length + other])
        .slice(0, 3);
      const count = given.reduce((rows, other) => rows * (sizes[other] as number), 1);
      const rows = Array.from({ length: count }, () => {
        const raw = Array.from({ length: size }, () => weights[next++ % weights.length] as number);
        const total = sum(raw);
        return total === 0 ? raw.map((_, state) => (state === 0 ? 1 : 0)) : raw.map((each) => each / total);
      });
      return { variable: `v${index}`, given: given.map((other) => `v${other}`), rows };
    });
    const variables = shuffle.map((index) => ({ id: `v${index}`, states: states[index] as string[] }));
    const hardEntries = hard.flatMap((state, index) =>
      state !== null && index % 2 === 0 ? [[`v${index}`, `s${state % (sizes[index] as number)}`]] : [],
    );
    const softEntries = soft.flatMap((values, index) =>
      values === null ? [] : [[`v${index}`, values.slice(0, sizes[index])]],
    );
    return {
      network: { variables, tables: shuffle.map((index) => tables[index] as Network['tables'][number]) },
      evidence: { hard: Object.fromEntries(hardEntries), soft: Object.fromEntries(softEntries) },
    };
  });

/** Every order of the given things. */
export function everyOrder<T>(things: readonly T[]): T[][] {
  if (things.length <= 1) return [[...things]];
  return things.flatMap((thing, index) =>
    everyOrder(things.toSpliced(index, 1)).map((rest) => [thing, ...rest]),
  );
}
