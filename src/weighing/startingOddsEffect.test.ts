import { expect, it } from 'vitest';
import type { PreparedCase } from '../evidence/preparedCase.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import { makingOf, startingOddsEffect } from './startingOddsEffect.ts';

const odds = (period: number, bench: number, machine: number, deceive: number) => ({
  name: '',
  why: '',
  period,
  'bench-copy': bench,
  'machine-copy': machine,
  'to-deceive': deceive,
});
const startingOdds = { used: odds(40, 30, 20, 10), wary: odds(10, 30, 20, 40), never: odds(0, 0, 0, 10) };
const prepared = (used: string) =>
  ({ odds: used, knowledge: { making: { startingOdds } } }) as unknown as PreparedCase;
const posterior = (readings: Partial<Record<ReadingId, number>>): Posterior => ({
  readings: {
    ...(Object.fromEntries(readingIds.map((id) => [id, 0])) as Record<ReadingId, number>),
    ...readings,
  },
  total: 1,
  log: 0,
});
const found = posterior({
  'period-intact': 0.2,
  'period-repaired': 0.16,
  'later-bench-copy': 0.09,
  'later-machine-copy': 0.02,
  'made-to-deceive': 0.06,
});

it('puts other odds in the place of those that were used, the findings as they are', () => {
  const [same, wary] = startingOddsEffect(prepared('used'), found);
  expect(same).toMatchObject({ odds: 'used', leading: 'period-intact' });
  expect(same?.probabilities['period-intact']).toBeCloseTo(0.2 / 0.53, 12);
  // Period a quarter of what it was: 0.05 + 0.04; copies as they were: 0.09 + 0.02; a fake four times: 0.24. Together 0.44.
  expect(wary).toMatchObject({ odds: 'wary', leading: 'made-to-deceive' });
  expect(wary?.probabilities['period-intact']).toBeCloseTo(0.05 / 0.44, 12);
  expect(wary?.probabilities['period-repaired']).toBeCloseTo(0.04 / 0.44, 12);
  expect(wary?.probabilities['later-bench-copy']).toBeCloseTo(0.09 / 0.44, 12);
  expect(wary?.probabilities['later-machine-copy']).toBeCloseTo(0.02 / 0.44, 12);
  expect(wary?.probabilities['made-to-deceive']).toBeCloseTo(0.24 / 0.44, 12);
  // Nothing is told to be less than 1 in 1000.
  expect(wary?.probabilities['made-up']).toBe(0.001);
});

it('never tells more than 999 in 1000', () => {
  const never = startingOddsEffect(prepared('used'), found)[2];
  expect(never).toMatchObject({ odds: 'never', leading: 'made-to-deceive' });
  expect(never?.probabilities['made-to-deceive']).toBe(0.999);
});

it('has nothing to tell of where all is ruled out but what the odds leave out, and of odds it does not know', () => {
  // Under “never” only a fake was possible, so nothing is known of the others: they stay at nothing.
  const [, wary] = startingOddsEffect(prepared('never'), posterior({ 'made-to-deceive': 1 }));
  expect(wary?.probabilities['made-to-deceive']).toBe(0.999);
  expect(wary?.probabilities['period-intact']).toBe(0.001);
  const [none] = startingOddsEffect(prepared('used'), posterior({}));
  expect(Object.values(none?.probabilities ?? {})).toEqual(readingIds.map(() => 0.001));
  expect(none?.leading).toBe('period-intact');
  expect(startingOddsEffect(prepared('rosy'), found)).toEqual([]);
});

it('leads with the earlier listed of equal ones', () => {
  const [same] = startingOddsEffect(prepared('used'), posterior({ 'made-up': 0.5, 'made-to-deceive': 0.5 }));
  expect(same?.leading).toBe('made-up');
});

it('knows of which making a reading is', () => {
  expect(readingIds.map((id) => makingOf[id])).toEqual([
    'period',
    'period',
    'period',
    'period',
    'bench-copy',
    'machine-copy',
    'to-deceive',
  ]);
});
