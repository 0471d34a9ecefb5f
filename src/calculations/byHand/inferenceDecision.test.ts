import { describe, expect, test } from 'vitest';
import reference from '../../../test/reference/decisions.json' with { type: 'json' };
import type { CalculationContext } from '../define.ts';
import { runById } from '../runById.ts';
import { outputOf } from '../testing/outputOf.ts';
import { inferenceDecision } from './inferenceDecision.ts';
import { inferenceWeight } from './inferenceWeight.ts';

// Values and their sources: test/reference/decisions.json.

const run = (id: string, input: unknown) => runById(id, input, { yearNow: 2026 } as CalculationContext);

/** Every number of what is wanted within the tolerance, everything else the same. */
function near(found: unknown, wanted: unknown, tolerance: number, path = ''): void {
  if (typeof wanted === 'number') {
    expect(Math.abs((found as number) - wanted), path).toBeLessThanOrEqual(tolerance);
  } else if (typeof wanted === 'object' && wanted !== null) {
    for (const [key, value] of Object.entries(wanted))
      near((found as Record<string, unknown>)[key], value, tolerance, `${path}.${key}`);
  } else {
    expect(found, path).toBe(wanted);
  }
}

describe('values from outside', () => {
  test('the oil driller, with and without soundings', () => {
    const { input, expected, signals, tolerance } = reference.decision;
    const found = outputOf(inferenceDecision, input);
    near(found, expected, tolerance);
    near(found, { signals }, tolerance);
  });

  test.each(reference.scale)('a ratio of $likelihoodRatio', ({ likelihoodRatio, ...wanted }) => {
    near(outputOf(inferenceWeight, { likelihoodRatio }), wanted, 1e-12);
  });

  test('ten sixes in twenty throws', () => {
    const { input, decibans, posterior, tolerance } = reference.die;
    near(outputOf(inferenceWeight, input), { decibans, posterior }, tolerance);
  });
});

test('no look is worth more than knowing the state, and one that says nothing adds nothing', () => {
  const { input } = reference.decision;
  const full = outputOf(inferenceDecision, input);
  expect(full.lookAdds).toBeLessThanOrEqual(full.perfectInformation);
  const states = Object.keys(input.prior);
  const even = Object.fromEntries(states.map((state) => [state, 0.5]));
  near(
    outputOf(inferenceDecision, { ...input, signals: { heads: even, tails: even } }),
    { lookAdds: 0 },
    1e-12,
  );
});

describe('bad input gives plain sentences that say what to do', () => {
  const prior = { a: 0.4, b: 0.6 };
  const payoff = { go: { a: 1, b: -1 } };
  test.each<[string, object, string, string]>([
    ['inference.decision', { prior: { a: 0.4, b: 0.5 }, payoff }, 'prior', 'sum to 1'],
    ['inference.decision', { prior, payoff: {} }, 'payoff', 'at least one action'],
    ['inference.decision', { prior, payoff: { go: { a: 1 } } }, 'payoff.go', 'says nothing of “b”'],
    ['inference.decision', { prior, payoff: { go: { a: 1, b: 2, c: 3 } } }, 'payoff.go.c', 'no probability'],
    [
      'inference.decision',
      { prior, payoff, signals: { yes: { a: 0.5, b: 1 } } },
      'signals',
      '“a” holds sums to 0.5',
    ],
    ['inference.weight', { likelihoodRatio: 0 }, 'likelihoodRatio', 'write'],
    ['inference.weight', { likelihoodRatio: 2, prior: 1 }, 'prior', 'below 1'],
  ])('%s %o', (id, input, path, words) => {
    const result = run(id, input);
    if (result.ok) throw new Error('no fault');
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
