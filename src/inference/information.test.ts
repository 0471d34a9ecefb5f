import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyNetwork } from '../../test/kits/anyNetwork.ts';
import { bruteForce } from '../../test/kits/bruteForce.ts';
import { entropyBits } from './entropy.ts';
import { information } from './information.ts';
import type { Evidence, Network } from './network.ts';

/** Expected drop in entropy, the long way: set the candidate to each state, weigh by its share. */
function longWay(network: Network, evidence: Evidence, target: string, candidate: string): number {
  const whole = bruteForce(network, evidence);
  const before = entropyBits(Object.values(whole.shares[target] ?? {}));
  const after = Object.entries(whole.shares[candidate] ?? {}).reduce((sum, [state, share]) => {
    if (share === 0) return sum;
    const seen = bruteForce(network, { ...evidence, hard: { ...evidence.hard, [candidate]: state } });
    return sum + share * entropyBits(Object.values(seen.shares[target] ?? {}));
  }, 0);
  return before - after;
}

describe('information', () => {
  test('equals the expected drop in entropy reckoned the long way, is never below 0, and is even-handed', () => {
    fc.assert(
      fc.property(anyNetwork, fc.nat(4), ({ network, evidence }, pick) => {
        if (bruteForce(network, evidence).total === 0) return;
        const ids = network.variables.map((variable) => variable.id);
        const target = ids[pick % ids.length] as string;
        const found = information(network, evidence, target, ids);
        if (!found.ok || !found.possible) throw new Error('held impossible');
        for (const { variable, bits } of found.information) {
          expect(Math.abs(bits - longWay(network, evidence, target, variable))).toBeLessThan(1e-9);
          expect(bits).toBeGreaterThanOrEqual(0);
          const turned = information(network, evidence, variable, [target]);
          if (!turned.ok || !turned.possible) throw new Error('held impossible');
          expect(turned.information[0]?.bits).toBeCloseTo(bits, 9);
        }
      }),
      { seed: 1948, numRuns: 100 },
    );
  });

  test('impossible evidence and unknown names are told apart', () => {
    const network: Network = {
      variables: [{ id: 'a', states: ['x', 'y'] }],
      tables: [{ variable: 'a', given: [], rows: [[1, 0]] }],
    };
    expect(information(network, { hard: { a: 'y' } }, 'a', ['a'])).toEqual({
      ok: true,
      possible: false,
      conflicting: ['a'],
    });
    expect(information(network, {}, 'b', ['c'])).toMatchObject({
      ok: false,
      faults: [{ path: 'target' }, { path: 'candidates[0]' }],
    });
  });
});
