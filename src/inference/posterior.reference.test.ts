import { describe, expect, test } from 'vitest';
import published from '../../test/reference/bayes.json' with { type: 'json' };
import random from '../../test/reference/bayesRandom.json' with { type: 'json' };
import { decibans } from './decibans.ts';
import { information } from './information.ts';
import type { Evidence, Network } from './network.ts';
import { posterior } from './posterior.ts';

// Values and their sources: test/reference/bayes.json and bayesRandom.json.

type Shares = Record<string, Record<string, number>>;
const networks = published.networks as Record<string, Network>;

function answer(network: Network, evidence: Evidence) {
  const result = posterior(network, evidence);
  if (!result.ok || !result.possible) throw new Error(`no posterior: ${JSON.stringify(result)}`);
  return result;
}

function expectShares(found: Shares, expected: Shares, tolerance: number) {
  for (const [id, states] of Object.entries(expected)) {
    for (const [state, share] of Object.entries(states)) {
      expect(Math.abs((found[id]?.[state] as number) - share), `${id} ${state}`).toBeLessThanOrEqual(
        tolerance,
      );
    }
  }
}

describe('published networks', () => {
  test.each(published.posteriors)('$id: $what', (check) => {
    const evidence = { hard: check.evidence as unknown as Record<string, string>, soft: check.soft ?? {} };
    const found = answer(networks[check.network] as Network, evidence);
    expectShares(found.posteriors, check.posteriors as unknown as Shares, check.tolerance);
    if (check.evidenceProbability !== undefined) {
      expect(Math.abs(Math.exp(found.logEvidence) - check.evidenceProbability)).toBeLessThanOrEqual(
        check.tolerance,
      );
    }
    expect(found.arithmetic).toBe('plain');
  });

  test.each(published.impossible)('$id is an answer of its own', (check) => {
    const found = posterior(networks[check.network] as Network, {
      hard: check.evidence as Record<string, string>,
    });
    expect(found).toEqual({
      ok: true,
      possible: false,
      conflicting: Object.keys(check.evidence).sort((a, b) => (a === 'tub' ? -1 : b === 'tub' ? 1 : 0)),
    });
  });
});

describe('information', () => {
  test.each(published.information)('$id', (check) => {
    const network = networks[check.network] as Network;
    const found = information(network, { hard: check.evidence as Record<string, string> }, check.target, [
      check.candidate,
    ]);
    if (!found.ok || !found.possible) throw new Error('no information');
    expect(Math.abs((found.information[0]?.bits as number) - check.bits)).toBeLessThanOrEqual(
      check.tolerance,
    );
    expect(Math.abs(found.targetBits - check.targetBits)).toBeLessThanOrEqual(check.tolerance);
  });
});

describe('weight of evidence', () => {
  test.each(published.weights)('$hypothesis given $evidence', (check) => {
    const [id, state] = check.hypothesis as [string, string];
    const network = networks[check.network] as Network;
    const before = answer(network, {}).posteriors[id]?.[state] as number;
    const after = answer(network, { hard: check.evidence as unknown as Record<string, string> }).posteriors[
      id
    ]?.[state] as number;
    expect(
      Math.abs(decibans(after / (1 - after) / (before / (1 - before))) - check.decibans),
    ).toBeLessThanOrEqual(check.tolerance);
  });

  test('weights of findings with a shared cause do not add', () => {
    const { sumOfSeparate, joint } = published.weightsDoNotAdd;
    const [john, mary, both] = published.weights.map((each) => each.decibans) as [number, number, number];
    expect(john + mary).toBeCloseTo(sumOfSeparate, 9);
    expect(both).toBeCloseTo(joint, 9);
    expect(both).toBeLessThan(john + mary);
  });
});

describe('twenty random networks', () => {
  test.each(random.cases)('$id ($source)', (check) => {
    const network = check.network as Network;
    const before = answer(network, {});
    expectShares(before.posteriors, check.shares as unknown as Shares, check.tolerance);
    const evidence = check.evidence as unknown as Record<string, string>;
    const after = answer(network, {
      hard: evidence,
      soft: check.soft as unknown as Record<string, number[]>,
    });
    expectShares(after.posteriors, check.posteriors as unknown as Shares, check.tolerance);
    expect(Math.abs(Math.exp(after.logEvidence) - check.evidenceProbability)).toBeLessThanOrEqual(
      check.tolerance,
    );
  });
});
