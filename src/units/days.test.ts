import { expect, it } from 'vitest';
import { dayWords } from './days.ts';

it('writes a day, or the day of a moment, as a letter does', () => {
  expect(dayWords('2026-11-25')).toBe('25 November 2026');
  expect(dayWords('1790-01-02T23:59:00+02:00')).toBe('2 January 1790');
});

it('leaves what is no day as it stands', () => {
  expect(dayWords('in the spring')).toBe('in the spring');
  expect(dayWords('2026-13-01')).toBe('2026-13-01');
});
