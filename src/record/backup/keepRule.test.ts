import { expect, it } from 'vitest';
import { mayGo } from './keepRule.ts';

const copy = (text: string) => ({ name: text, madeAt: new Date(text) });

it('keeps the newest of each of 7 days, 4 weeks and 12 months', () => {
  const days = Array.from({ length: 800 }, (_, n) => {
    const at = new Date(2026, 10, 30 - n, 18);
    return { name: String(n), madeAt: at };
  });
  const go = new Set(mayGo(days));
  const stays = days.filter(({ name }) => !go.has(name)).map(({ name }) => Number(name));
  // Monday 30 November 2026 back to Tuesday the 24th; then the Sundays before; then the last days of eleven months before.
  expect(stays.slice(0, 7)).toEqual([0, 1, 2, 3, 4, 5, 6]);
  expect(stays.slice(7, 9)).toEqual([8, 15]);
  expect(stays.slice(9)).toEqual([30, 61, 91, 122, 153, 183, 214, 244, 275, 303, 334]);
});

it('keeps the newest copy of all, and all copies while there are few', () => {
  expect(mayGo([copy('2020-01-01T10:00:00')])).toEqual([]);
  expect(mayGo([copy('2026-11-30T08:00:00'), copy('2026-11-30T09:00:00')])).toEqual(['2026-11-30T08:00:00']);
});
