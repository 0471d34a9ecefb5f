import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { brierScore, logRatioCost, logScoreBits } from './scoring.ts';

// Figures and their sources stand in test/reference/calibration.json.
const reference = JSON.parse(
  readFileSync(new URL('../../test/reference/calibration.json', import.meta.url), 'utf8'),
);

const binary = (p: number[], outcome: number[]) =>
  p.map((each, i) => ({ probabilities: [1 - each, each], truth: outcome[i] ?? 0 }));

describe('scores against published and independently reckoned values', () => {
  it.each(reference.logRatioCost as { id: string; whenTrue: number[]; whenFalse: number[]; cost: number }[])(
    'cost of $id',
    (each) => {
      expect(logRatioCost(each.whenTrue, each.whenFalse)).toBeCloseTo(each.cost, 9);
    },
  );

  it.each(reference.brier as { id: string; p: number[]; outcome: number[]; brier: number; bits?: number }[])(
    'Brier score of $id',
    (each) => {
      expect(brierScore(binary(each.p, each.outcome))).toBeCloseTo(each.brier, 10);
      if (each.bits !== undefined)
        expect(logScoreBits(binary(each.p, each.outcome))).toBeCloseTo(each.bits, 9);
    },
  );

  it('is 0 for perfect ratios, 1 for ratios of one, infinite for a certain error, and undefined without one side', () => {
    expect(logRatioCost([Number.POSITIVE_INFINITY], [Number.NEGATIVE_INFINITY])).toBe(0);
    expect(logRatioCost([0], [0])).toBeCloseTo(1, 12);
    expect(logRatioCost([Number.NEGATIVE_INFINITY], [0])).toBe(Number.POSITIVE_INFINITY);
    expect(logRatioCost([], [0])).toBeUndefined();
  });
});
