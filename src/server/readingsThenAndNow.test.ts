import { expect, test } from 'vitest';
import { outOf } from '../weighing/probabilityWords.ts';
import { areMoved } from './readingsThenAndNow.ts';

const signed = {
  leading: 'period-repaired' as const,
  readings: [
    { id: 'period-repaired' as const, probability: 0.968 },
    { id: 'made-to-deceive' as const, probability: 0.0004 },
  ],
  years: { p90: [1765, 1799] as [number, number] },
};

test('readings have moved where they would be printed otherwise, and nowhere else', () => {
  const now = (repaired: number, deceive = 0.0004) => ({
    ...signed,
    readings: [
      { id: 'period-repaired' as const, probability: repaired },
      { id: 'made-to-deceive' as const, probability: deceive },
    ],
  });
  expect(areMoved(signed, signed)).toBe(false);
  // Printed as 97 in 100 both, though the figure is another by half a hundredth.
  expect(outOf(0.974)).toBe(outOf(0.968));
  expect(areMoved(signed, now(0.974))).toBe(false);
  expect(areMoved(signed, now(0.976))).toBe(true);
  // No reading is printed below 1 in 1000, but 2 in 1000 is another print.
  expect(areMoved(signed, now(0.968, 0.0013))).toBe(false);
  expect(areMoved(signed, now(0.968, 0.0018))).toBe(true);
});

test('readings have moved where others lead, or the years are others to the year', () => {
  expect(areMoved(signed, { ...signed, leading: 'period-intact' })).toBe(true);
  expect(areMoved(signed, { ...signed, years: { p90: [1765.4, 1798.6] } })).toBe(false);
  expect(areMoved(signed, { ...signed, years: { p90: [1765, 1798.4] } })).toBe(true);
  expect(areMoved(signed, { ...signed, years: { p90: [1764.4, 1799] } })).toBe(true);
});
