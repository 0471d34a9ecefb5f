import { describe, expect, test } from 'vitest';
import reference from '../../../test/reference/ratioCalibration.json' with { type: 'json' };
import type { CalculationContext } from '../define.ts';
import { runById } from '../runById.ts';
import type { OutputOf } from '../runCalculation.ts';
import { outputOf } from '../testing/outputOf.ts';
import { evidenceCalibration } from './evidenceCalibration.ts';

// Values and their sources: test/reference/ratioCalibration.json.

const run = (input: unknown) =>
  runById('evidence.calibration', input, { yearNow: 2026 } as CalculationContext);

/** Each test asks for the parts it looks at. */
const calibrated = (input: unknown) =>
  outputOf(evidenceCalibration, input) as Required<OutputOf<typeof evidenceCalibration>>;

function nearAll(found: readonly number[], wanted: readonly number[], digits: number) {
  expect(found).toHaveLength(wanted.length);
  found.forEach((each, index) => {
    expect(each).toBeCloseTo(wanted[index] as number, digits);
  });
}

describe('values from outside', () => {
  test.each(reference.ratios)('$id', ({ whenTrue, whenFalse, posteriors, misleading, ...wanted }) => {
    const found = calibrated({ logRatios: { whenTrue, whenFalse } }).ratios;
    expect(found.cllr).toBeCloseTo(wanted.cllr, 9);
    expect(found.cllrMin).toBeCloseTo(wanted.cllrMin, 9);
    expect(found.cllrCal).toBeCloseTo(wanted.cllrCal, 9);
    nearAll(
      found.pooled.map(({ posterior }) => posterior),
      posteriors,
      9,
    );
    nearAll(Object.values(found.misleading), Object.values(misleading), 9);
  });

  test.each(reference.rising)('$id', ({ values, weights, fit, blocks }) => {
    const { rising } = calibrated({ rising: { values, ...(weights ? { weights } : {}) } });
    nearAll(rising.fit, fit, 9);
    expect(rising.blocks).toEqual(blocks);
  });

  test('forecasts and their split', () => {
    const { probability, came, origin: _, source: __, ...wanted } = reference.forecasts;
    const forecasts = probability.map((each, index) => ({ probability: each, came: came[index] === 1 }));
    const found = calibrated({ forecasts }).forecasts;
    for (const [name, value] of Object.entries(wanted))
      expect(found[name as keyof typeof wanted], name).toBeCloseTo(value, 9);
  });

  test('a logistic scale', () => {
    const { score, came, intercept, slope, probabilities, logRatios } = reference.scores;
    const found = calibrated({
      scores: score.map((each, i) => ({ score: each, came: came[i] === 1 })),
    }).scores;
    nearAll([found.intercept, found.slope], [intercept, slope], 6);
    nearAll(found.probabilities, probabilities, 6);
    nearAll(found.logRatios, logRatios, 6);
  });
});

describe('what must hold', () => {
  test('perfect ratios cost nothing, ratios of 1 one bit, and ruling out the truth without end', () => {
    const cost = (whenTrue: unknown[], whenFalse: unknown[]) =>
      calibrated({ ratios: { whenTrue, whenFalse } }).ratios;
    expect(cost(['infinite'], [0])).toMatchObject({ cllr: 0, cllrMin: 0, cllrCal: 0 });
    expect(cost([1, 1], [1]).cllr).toBeCloseTo(1, 12);
    expect(cost([0, 2], [1])).toMatchObject({ cllr: 'infinite', cllrCal: 'infinite' });
  });

  test('another scale of the same order leaves cllrMin, and moving a score moves no probability', () => {
    const [one, other] = reference.ratios.map(({ whenTrue, whenFalse }) =>
      calibrated({ logRatios: { whenTrue, whenFalse } }),
    );
    expect(one?.ratios.cllrMin).toBe(other?.ratios.cllrMin);
    const scores = reference.scores.score.map((score, i) => ({
      score,
      came: reference.scores.came[i] === 1,
    }));
    const moved = scores.map(({ score, came }) => ({ score: 1000 + 50 * score, came }));
    nearAll(
      calibrated({ scores: moved }).scores.probabilities,
      calibrated({ scores }).scores.probabilities,
      9,
    );
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  test.each<[object, string, string]>([
    [{}, '', 'nothing to judge'],
    [{ ratios: { whenTrue: [], whenFalse: [1] } }, 'ratios.whenTrue', 'at least 1 entry'],
    [{ ratios: { whenTrue: [-1], whenFalse: [1] } }, 'ratios.whenTrue[0]', 'at least 0'],
    [{ rising: { values: [1, 2], weights: [1] } }, 'rising.weights', 'one weight for each value'],
    [{ forecasts: [{ probability: 1.2, came: true }] }, 'forecasts[0].probability', 'at most 1'],
    [
      {
        scores: [
          { score: 1, came: false },
          { score: 2, came: true },
        ],
      },
      'scores',
      'add cases of both sides',
    ],
  ])('%o', (input, path, words) => {
    const result = run(input);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
