import { expect, it } from 'vitest';
import reference from '../../test/reference/ratioCalibration.json' with { type: 'json' };
import { demonstratedWords } from '../weighing/demonstratedWords.ts';
import { demonstratedRatio } from './demonstratedRatio.ts';

const logs = (ratios: readonly number[]) => ratios.map(Math.log);

it.each(reference.demonstrated)('$id: $bound', ({ whenTrue, whenFalse, bound, tolerance }) => {
  expect(Math.abs(demonstratedRatio(whenTrue, whenFalse) - bound)).toBeLessThan(tolerance);
});

it('is worked by hand', () => {
  // Between 1 and 2 nothing true is missed, and of 3 + 1 false cases one misleads: 1/(1/4) = 4 would do. Between 2 and 4 one of
  // three is missed: (2/3)/(1/4) = 8/3, reached before 4.
  expect(demonstratedRatio(logs([2, 4, 8]), logs([0.5, 0.4, 0.2]))).toBeCloseTo(8 / 3, 12);
  // All apart: only the case added misleads, one of ten.
  expect(demonstratedRatio(logs([50, 60]), logs(Array(9).fill(0.1)))).toBeCloseTo(10, 12);
  // Nothing is borne out where the ratios point the wrong way, where they say nothing, or where a side has no cases.
  expect(demonstratedRatio(logs([0.5, 0.9]), logs([3, 2]))).toBe(1);
  expect(demonstratedRatio(logs([1, 1]), logs([1, 1]))).toBe(1);
  expect(demonstratedRatio([], logs([0.1]))).toBe(1);
  expect(demonstratedRatio(logs([9]), [])).toBe(1);
  // One false case at 2 ends it just there: 2 · (1 + 1)/4 is no longer less than 1.
  expect(demonstratedRatio(logs([10, 10]), logs([2, 0.1, 0.1]))).toBeCloseTo(2, 12);
  // With more false cases it is passed, and above 2 that case misleads no more: 1/(1/6).
  expect(demonstratedRatio(logs([10, 10]), logs([2, 0.1, 0.1, 0.1, 0.1]))).toBeCloseTo(6, 12);
  // Cases on the wrong side of 1 count as missed from the start: (1/2)/(1/4).
  expect(demonstratedRatio(logs([0.5, 0.5, 5, 5]), logs([0.9, 0.9, 0.9]))).toBeCloseTo(2, 12);
  // What is missed at 3, half of the true cases, ends it there: 1/2 + 3/4 is over 1, and 0 + 3/4 below it was not.
  expect(demonstratedRatio(logs([3, 90]), logs([0.1, 0.1, 0.1]))).toBeCloseTo(3, 12);
});

it('is told for both sides, rounded down, with the number of cases', () => {
  const period = logs([2, 4, 8]);
  const later = logs([0.5, 0.4, 0.2]);
  expect(demonstratedWords({ period, later })).toBe(
    'Held against 6 pieces whose examination and verdict are in print, likelihood ratios held up to about 2 to 1 for period work and up to about 2 to 1 for later work; a stronger weight rests on judged figures and has not been shown.',
  );
  // For period work 10 as above; for later work ten to one is borne out against two cases of period work only to three to one.
  const apart = demonstratedWords({ period: logs([50, 60]), later: logs(Array(9).fill(0.1)) });
  expect(apart).toContain('up to about 10 to 1 for period work and up to about 3 to 1 for later work');
  expect(demonstratedWords({ period: logs([10, 10]), later: logs([2, 0.1, 0.1]) })).toContain(
    'up to about 2 to 1',
  );
  expect(demonstratedWords({ period: [0], later: [0] })).toContain('held not even to 2 to 1 for period work');
});
