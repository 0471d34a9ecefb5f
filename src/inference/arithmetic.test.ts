import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyNetwork } from '../../test/kits/anyNetwork.ts';
import { compileNetwork } from './compileNetwork.ts';
import { logArithmetic } from './logArithmetic.ts';
import { plainArithmetic } from './plainArithmetic.ts';
import { planElimination } from './plan.ts';
import { sweep } from './propagate.ts';
import { indexEvidence, requestFor } from './question.ts';

test('plain numbers and logarithms give the same answers, and plain numbers suffice in ordinary cases', () => {
  fc.assert(
    fc.property(anyNetwork, (drawn) => {
      const network = compileNetwork(drawn.network);
      const evidence = indexEvidence(network, drawn.evidence);
      const plan = planElimination(network, requestFor(evidence, [...network.ids.keys()]));
      const plain = sweep(plan, evidence, plainArithmetic, 'plain');
      const log = sweep(plan, evidence, logArithmetic, 'log');
      expect(plain).toBeDefined();
      expect(plain?.possible).toBe(log?.possible);
      if (!plain?.possible || !log?.possible) return;
      expect(plain.logEvidence).toBeCloseTo(log.logEvidence, 9);
      for (const variable of plan.order) {
        plain.marginal(variable).forEach((share, state) => {
          expect(share).toBeCloseTo(log.marginal(variable)[state] as number, 10);
        });
      }
    }),
    { seed: 1614, numRuns: 300 },
  );
});

test('plain numbers say so when a product leaves their range', () => {
  const offsets = Int32Array.of(0, 1);
  expect(plainArithmetic.takeTable(Float64Array.of(1e-200, 1), [1e-200, 1], offsets, 0)).toBe(true);
  expect(plainArithmetic.takeTable(Float64Array.of(1, 1), [1e200, 1], offsets, 0)).toBe(true);
  expect(plainArithmetic.takeTable(Float64Array.of(0, 1), [1e-200, 0], offsets, 0)).toBe(false);
});
