import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyNetwork, everyOrder } from '../../test/kits/anyNetwork.ts';
import { bruteForce } from '../../test/kits/bruteForce.ts';
import type { Network } from './network.ts';
import { posterior } from './posterior.ts';

const seed = 1763;

function answer(...question: Parameters<typeof posterior>) {
  const result = posterior(...question);
  if (!result.ok || !result.possible) throw new Error(`no posterior: ${JSON.stringify(result)}`);
  return result;
}

/** A cause with two states, and any number of traces of it, each `r` as likely under the second state as under the first. */
function star(traces: number, ratio: number, start: readonly number[] = [0.5, 0.5]): Network {
  const ids = Array.from({ length: traces }, (_, index) => `trace-${index}`);
  const rows = [
    [0.5, 0.5],
    [0.5 * ratio, 1 - 0.5 * ratio],
  ];
  return {
    variables: [{ id: 'cause', states: ['a', 'b'] }, ...ids.map((id) => ({ id, states: ['seen', 'not'] }))],
    tables: [
      { variable: 'cause', given: [], rows: [start] },
      ...ids.map((id) => ({ variable: id, given: ['cause'], rows })),
    ],
  };
}

function allSeen(network: Network): Record<string, string> {
  return Object.fromEntries(network.tables.slice(1).map((table) => [table.variable, 'seen']));
}

describe('against adding up every state of affairs', () => {
  test('every order of elimination gives the same', () => {
    fc.assert(
      fc.property(anyNetwork, ({ network, evidence }) => {
        const truth = bruteForce(network, evidence);
        const ids = network.variables.map((variable) => variable.id);
        for (const order of everyOrder(ids)) {
          const found = posterior(network, evidence, undefined, order);
          if (truth.total === 0) {
            expect(found).toMatchObject({ ok: true, possible: false });
            continue;
          }
          if (!found.ok || !found.possible) throw new Error('held impossible');
          expect(Math.abs(found.logEvidence - Math.log(truth.total))).toBeLessThan(1e-9);
          for (const id of ids) {
            for (const [state, share] of Object.entries(truth.shares[id] ?? {})) {
              expect(Math.abs((found.posteriors[id]?.[state] as number) - share)).toBeLessThan(1e-9);
            }
          }
        }
      }),
      { seed, numRuns: 150 },
    );
  });

  test('evidence that can’t stand together is named, and nothing in the list could be left out', () => {
    let impossible = 0;
    fc.assert(
      fc.property(anyNetwork, ({ network, evidence }) => {
        const found = posterior(network, evidence);
        if (!found.ok || found.possible) return;
        impossible++;
        const only = (ids: readonly string[]) => ({
          hard: Object.fromEntries(Object.entries(evidence.hard ?? {}).filter(([id]) => ids.includes(id))),
          soft: Object.fromEntries(Object.entries(evidence.soft ?? {}).filter(([id]) => ids.includes(id))),
        });
        expect(bruteForce(network, only(found.conflicting)).total).toBe(0);
        for (const id of found.conflicting) {
          expect(
            bruteForce(network, only(found.conflicting.filter((each) => each !== id))).total,
          ).toBeGreaterThan(0);
        }
      }),
      { seed, numRuns: 600 },
    );
    expect(impossible).toBeGreaterThan(20);
  });

  test('asking for fewer variables changes no answer', () => {
    fc.assert(
      fc.property(anyNetwork, ({ network, evidence }) => {
        const whole = posterior(network, evidence);
        if (!whole.ok || !whole.possible) return;
        for (const { id } of network.variables) {
          const alone = answer(network, evidence, [id]);
          expect(Object.keys(alone.posteriors)).toEqual([id]);
          expect(alone.logEvidence).toBeCloseTo(whole.logEvidence, 10);
          for (const [state, share] of Object.entries(alone.posteriors[id] ?? {})) {
            expect(share).toBeCloseTo(whole.posteriors[id]?.[state] as number, 10);
          }
        }
      }),
      { seed, numRuns: 200 },
    );
  });
});

describe('numbers too small for a number', () => {
  test('a thousand findings, each 1 in 1000: the log of the evidence is exact though the evidence is below 1e-3000', () => {
    const network = star(1000, 1e-3, [0, 1]);
    const found = answer(network, { hard: allSeen(network) }, ['cause']);
    expect(found.logEvidence).toBeCloseTo(1000 * Math.log(0.5e-3), 6);
    expect(found.posteriors.cause).toEqual({ a: 0, b: 1 });
  });

  test('evidence of 1e-300 against evidence of 1e-300 leaves even shares', () => {
    const network = star(2, 0.5);
    const soft = { 'trace-0': [1e-300, 1e-300], cause: [1e-300, 3e-300] };
    const found = answer(network, { soft }, ['cause']);
    expect(found.posteriors.cause?.b).toBeCloseTo(0.75, 12);
    expect(found.logEvidence).toBeCloseTo(Math.log(2e-300) + Math.log(1e-300), 6);
  });

  test('a state driven below 1e-600 comes back when the other is ruled out: logarithms take over', () => {
    const network = star(200, 1e-3);
    const soft = { cause: [0, 1] };
    const found = answer(network, { hard: allSeen(network), soft }, ['cause']);
    expect(found.posteriors.cause).toEqual({ a: 0, b: 1 });
    expect(found.logEvidence).toBeCloseTo(Math.log(0.5) + 200 * Math.log(0.5e-3), 6);
    const late: Network = {
      variables: [...network.variables, { id: 'late', states: ['seen', 'not'] }],
      tables: [...network.tables, { variable: 'late', given: ['cause'], rows: [[0, 1], [1, 0]] }], // biome-ignore format: a table
    };
    const ruledOut = answer(late, { hard: { ...allSeen(network), late: 'seen' } }, ['cause']);
    expect(ruledOut.posteriors.cause).toEqual({ a: 0, b: 1 });
    expect(ruledOut.arithmetic).toBe('log');
    expect(ruledOut.logEvidence).toBeCloseTo(Math.log(0.5) + 200 * Math.log(0.5e-3), 6);
  });

  test('likelihoods of any scale, up to the largest number there is, give the same shares', () => {
    const network = star(1, 0.2);
    const plain = answer(network, { soft: { cause: [1, 4], 'trace-0': [3, 1] } }).posteriors;
    for (const scale of [1e-307, 1e-200, 1e-20, 1e20, 1e200, 1e307]) {
      const scaled = answer(network, {
        soft: { cause: [1 * scale, 4 * scale], 'trace-0': [3 * scale, 1 * scale] },
      });
      for (const id of ['cause', 'trace-0']) {
        for (const [state, share] of Object.entries(plain[id] ?? {}))
          expect(scaled.posteriors[id]?.[state]).toBeCloseTo(share, 12);
      }
    }
    const steep = answer(network, { soft: { cause: [1e300, 1e-300], 'trace-0': [0, 1] } });
    expect(steep.posteriors.cause?.a).toBe(1);
  });
});

describe('corners', () => {
  test('a variable nobody asks for and nothing hangs on changes nothing, even with a great table', () => {
    const network = star(2, 0.5);
    const many = Array.from({ length: 24 }, (_, index) => `leaf-${index}`);
    const crowd: Network = {
      variables: [
        ...network.variables,
        ...many.map((id) => ({ id, states: ['x', 'y'] })),
        { id: 'barren', states: ['x'] },
      ],
      tables: [
        ...network.tables,
        ...many.map((id) => ({ variable: id, given: ['cause'], rows: [[1, 0], [0.5, 0.5]] })), // biome-ignore format: a table
        { variable: 'barren', given: ['trace-0', 'trace-1'], rows: [[1], [1], [1], [1]] },
      ],
    };
    expect(answer(crowd, { hard: { 'trace-0': 'seen' } }, ['cause'])).toEqual(
      answer(network, { hard: { 'trace-0': 'seen' } }, ['cause']),
    );
  });

  test('certain tables pass certainty on', () => {
    const network: Network = {
      variables: [
        { id: 'a', states: ['0', '1'] },
        { id: 'b', states: ['0', '1'] },
        { id: 'either', states: ['0', '1'] },
      ],
      tables: [
        { variable: 'a', given: [], rows: [[0.5, 0.5]] },
        { variable: 'b', given: [], rows: [[0.5, 0.5]] },
        { variable: 'either', given: ['a', 'b'], rows: [[1, 0], [0, 1], [0, 1], [0, 1]] }, // biome-ignore format: a table
      ],
    };
    expect(answer(network, { hard: { either: '0' } }).posteriors).toMatchObject({
      a: { '0': 1, '1': 0 },
      b: { '0': 1, '1': 0 },
    });
    expect(answer(network, { hard: { either: '1', a: '0' } }).posteriors.b).toEqual({ '0': 0, '1': 1 });
    expect(posterior(network, { hard: { either: '0', a: '1', b: '0' } })).toEqual({
      ok: true,
      possible: false,
      conflicting: ['a', 'either'],
    });
  });

  test('a given state that soft evidence rules out is impossible, not a number', () => {
    const network = star(1, 0.5);
    const found = posterior(network, { hard: { cause: 'a' }, soft: { cause: [0, 1] } });
    expect(found).toEqual({ ok: true, possible: false, conflicting: ['cause'] });
    expect(posterior(network, { soft: { cause: [0, 0] } })).toEqual({
      ok: true,
      possible: false,
      conflicting: ['cause'],
    });
  });

  test('an empty network has an empty answer', () => {
    expect(answer({ variables: [], tables: [] })).toMatchObject({ posteriors: {}, logEvidence: 0 });
  });

  test('a chain of 2,000 is answered', () => {
    const ids = Array.from({ length: 2000 }, (_, index) => `v${index}`);
    const network: Network = {
      variables: ids.map((id) => ({ id, states: ['x', 'y'] })),
      tables: ids.map((id, index) =>
        index === 0 ? { variable: id, given: [], rows: [[0.3, 0.7]] } : { variable: id, given: [ids[index - 1] as string], rows: [[0.9, 0.1], [0.1, 0.9]] },
      ), // biome-ignore format: a table
    };
    const found = answer(network, { hard: { v1: 'x' } }, ['v0', 'v1999']);
    expect(found.posteriors.v0?.x).toBeCloseTo(0.27 / 0.34, 12);
    expect(found.posteriors.v1999?.x).toBeCloseTo(0.5, 12);
  });
});
