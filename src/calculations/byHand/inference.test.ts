import { describe, expect, test } from 'vitest';
import published from '../../../test/reference/bayes.json' with { type: 'json' };
import random from '../../../test/reference/bayesRandom.json' with { type: 'json' };
import type { CalculationContext } from '../define.ts';
import { runById } from '../runById.ts';
import { outputOf } from '../testing/outputOf.ts';
import { inferenceInformation, inferencePosterior } from './inference.ts';

// Values and their sources: test/reference/bayes.json and bayesRandom.json.

const context = { yearNow: 2026 } as CalculationContext;
const networks = published.networks as Record<string, object>;

function expectPosterior(input: object, expected: Record<string, object>, evidenceProbability?: number) {
  const found = outputOf(inferencePosterior, input);
  for (const [id, shares] of Object.entries(expected)) {
    for (const [state, share] of Object.entries(shares)) {
      expect(Math.abs((found.posteriors[id]?.[state] as number) - share), `${id} ${state}`).toBeLessThan(
        1e-9,
      );
    }
  }
  if (evidenceProbability !== undefined)
    expect(Math.exp(found.logEvidence)).toBeCloseTo(evidenceProbability, 9);
}

describe('inference.posterior', () => {
  test.each(published.posteriors)('$id', (check) => {
    const { evidence, soft = {}, posteriors } = check;
    expectPosterior(
      { ...networks[check.network], evidence, soft },
      posteriors as unknown as Record<string, object>,
      check.evidenceProbability,
    );
  });

  test.each(random.cases)('$id', ({ network, evidence, soft, posteriors, evidenceProbability }) => {
    expectPosterior(
      { ...network, evidence, soft },
      posteriors as unknown as Record<string, object>,
      evidenceProbability,
    );
  });

  test('answers only what is asked', () => {
    const found = outputOf(inferencePosterior, { ...networks.asia, ask: ['lung'] });
    expect(Object.keys(found.posteriors)).toEqual(['lung']);
  });

  test.each(published.impossible)(
    '$id is a fault that names what can’t stand together',
    ({ network, evidence }) => {
      const result = runById('inference.posterior', { ...networks[network], evidence }, context);
      expect(result).toEqual({
        ok: false,
        faults: [
          {
            code: 'inference.impossible-evidence',
            path: 'evidence',
            message:
              'What is given of “tub” and “either” can’t all be true in this network: check them, or the tables they hang on.',
          },
        ],
      });
    },
  );
});

describe('inference.information', () => {
  test.each(published.information)('$id', (check) => {
    const input = {
      ...networks[check.network],
      evidence: check.evidence,
      target: check.target,
      candidates: [check.candidate],
    };
    const found = outputOf(inferenceInformation, input);
    expect(found).toHaveLength(1);
    expect(found[0]?.variable).toBe(check.candidate);
    expect(Math.abs((found[0]?.bits as number) - check.bits)).toBeLessThan(1e-9);
  });
});
