import { describe, expect, test } from 'vitest';
import { checkNetwork } from './checkNetwork.ts';
import type { Network } from './network.ts';
import { posterior } from './posterior.ts';

const good: Network = {
  variables: [
    { id: 'rain', states: ['yes', 'no'] },
    { id: 'wet', states: ['yes', 'no'] },
  ],
  tables: [
    { variable: 'rain', given: [], rows: [[0.2, 0.8]] },
    { variable: 'wet', given: ['rain'], rows: [[0.9, 0.1], [0.1, 0.9]] }, // biome-ignore format: a table
  ],
};
const [rain, wet] = good.tables as [Network['tables'][number], Network['tables'][number]];

describe('a network’s faults are data', () => {
  test('a good one has none', () => {
    expect(checkNetwork(good)).toEqual([]);
  });

  test.each<[string, string, Network]>([
    [
      'inference.variable-twice',
      'variables[2].id',
      { ...good, variables: [...good.variables, { id: 'rain', states: ['yes'] }] },
    ],
    [
      'inference.state-twice',
      'variables[0].states',
      {
        ...good,
        variables: [
          { id: 'rain', states: ['yes', 'yes'] },
          { id: 'wet', states: ['yes', 'no'] },
        ],
      },
    ],
    [
      'inference.no-states',
      'variables[2].states',
      { ...good, variables: [...good.variables, { id: 'sun', states: [] }] },
    ],
    ['inference.no-table', 'tables', { ...good, tables: [rain] }],
    ['inference.table-twice', 'tables', { ...good, tables: [rain, rain, wet] }],
    [
      'inference.unknown-variable',
      'tables[1].given[0]',
      { ...good, tables: [rain, { ...wet, given: ['snow'] }] },
    ],
    [
      'inference.unknown-variable',
      'tables[2].variable',
      { ...good, tables: [rain, wet, { ...wet, variable: 'snow' }] },
    ],
    ['inference.given-itself', 'tables[1].given[0]', { ...good, tables: [rain, { ...wet, given: ['wet'] }] }],
    [
      'inference.given-twice',
      'tables[1].given[1]',
      { ...good, tables: [rain, { ...wet, given: ['rain', 'rain'] }] },
    ],
    ['inference.wrong-rows', 'tables[1].rows', { ...good, tables: [rain, { ...wet, rows: [[0.5, 0.5]] }] }],
    ['inference.wrong-row-length', 'tables[0].rows[0]', { ...good, tables: [{ ...rain, rows: [[1]] }, wet] }],
    [
      'inference.not-a-probability',
      'tables[0].rows[0]',
      { ...good, tables: [{ ...rain, rows: [[1.2, -0.2]] }, wet] },
    ],
    [
      'inference.not-a-probability',
      'tables[0].rows[0]',
      { ...good, tables: [{ ...rain, rows: [[Number.NaN, 1]] }, wet] },
    ],
    [
      'inference.row-sum',
      'tables[0].rows[0]',
      { ...good, tables: [{ ...rain, rows: [[0.2, 0.8 + 2e-9]] }, wet] },
    ],
    [
      'inference.cycle',
      'tables',
      { ...good, tables: [{ variable: 'rain', given: ['wet'], rows: wet.rows }, wet] },
    ],
  ])('%s at %s', (code, path, network) => {
    const faults = checkNetwork(network);
    expect(faults).toContainEqual(expect.objectContaining({ code, path }));
    for (const fault of faults) expect(fault.message).toMatch(/^\S[^\n]*\.$/);
    expect(posterior(network)).toMatchObject({ ok: false });
  });

  test('all faults are listed at once', () => {
    const network = {
      ...good,
      tables: [
        { ...rain, rows: [[0.3, 0.8]] },
        { ...wet, given: ['snow'] },
      ],
    };
    expect(checkNetwork(network).map((fault) => fault.code)).toEqual([
      'inference.row-sum',
      'inference.unknown-variable',
    ]);
  });

  test('a ring is shown in the order things follow', () => {
    const variables = ['a', 'b', 'c', 'd'].map((id) => ({ id, states: ['x'] }));
    const tables = [['a', 'c'], ['b', 'a'], ['c', 'b'], ['d', 'a']].map(([variable, from]) => ({ variable: variable as string, given: [from as string], rows: [[1]] })); // biome-ignore format: a table
    expect(checkNetwork({ variables, tables })[0]?.message).toContain('a → b → c → a');
  });

  test('a row off by less than 1e-9 passes', () => {
    expect(checkNetwork({ ...good, tables: [{ ...rain, rows: [[0.2, 0.8 + 5e-10]] }, wet] })).toEqual([]);
  });
});

describe('questions the network can’t answer', () => {
  test.each([
    ['inference.unknown-variable', 'evidence.snow', posterior(good, { hard: { snow: 'yes' } })],
    ['inference.unknown-state', 'evidence.rain', posterior(good, { hard: { rain: 'maybe' } })],
    ['inference.soft-length', 'soft.rain', posterior(good, { soft: { rain: [1] } })],
    ['inference.soft-value', 'soft.rain', posterior(good, { soft: { rain: [1, -1] } })],
    ['inference.soft-value', 'soft.rain', posterior(good, { soft: { rain: [1, Number.POSITIVE_INFINITY] } })],
    ['inference.unknown-variable', 'ask[0]', posterior(good, {}, ['snow'])],
    ['inference.unknown-variable', 'order[1]', posterior(good, {}, ['rain'], ['rain', 'snow'])],
  ])('%s at %s', (code, path, result) => {
    expect(result).toMatchObject({ ok: false, faults: [{ code, path }] });
  });

  test('a table too large to lay out is a fault, not a crash', () => {
    const ids = Array.from({ length: 30 }, (_, index) => `v${index}`);
    const states = ['1', '2', '3'];
    const network: Network = {
      variables: [
        ...ids.map((id) => ({ id, states })),
        ...ids.flatMap((a, i) => ids.slice(i + 1).map((b) => ({ id: `${a}-${b}`, states: ['x', 'y'] }))),
      ],
      tables: [
        ...ids.map((variable) => ({ variable, given: [], rows: [[0.5, 0.25, 0.25]] })),
        ...ids.flatMap((a, i) =>
          ids.slice(i + 1).map((b) => ({
            variable: `${a}-${b}`,
            given: [a, b],
            rows: Array.from({ length: 9 }, () => [0.5, 0.5]),
          })),
        ),
      ],
    };
    const pairs = Object.fromEntries(ids.flatMap((a, i) => ids.slice(i + 1).map((b) => [`${a}-${b}`, 'x'])));
    expect(posterior(network, { hard: pairs }, ['v0'])).toMatchObject({
      ok: false,
      faults: [{ code: 'inference.too-large' }],
    });
  });
});
