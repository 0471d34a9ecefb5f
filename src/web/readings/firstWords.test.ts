import { expect, it } from 'vitest';
import { firstWords } from './firstWords.ts';

it('says which reading leads and how probable it is, before the weights are there', () => {
  const readings = [
    { id: 'later-bench-copy' as const, probability: 0.08, low: 0.08, high: 0.08 },
    { id: 'period-altered' as const, probability: 0.62, low: 0.62, high: 0.62 },
  ];
  expect(firstWords({ leading: 'period-altered', readings })).toMatch(
    /^The leading reading is .*altered.*, 62 in 100; what each finding weighs is still to come\.$/,
  );
});
