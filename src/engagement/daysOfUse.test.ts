import { expect, test } from 'vitest';
import type { Purpose } from '../piece/engagement.ts';
import { daysOfUse } from './daysOfUse.ts';

const on = (purpose: Purpose, effectiveOn: string | undefined, answers: Record<string, string>) =>
  daysOfUse({ purpose, effectiveOn, answers });

// IRS Publication 561 (January 2023), page 10: valued no earlier than 60 days before the gift and no later than it.
// 2024 is a leap year: from 31 December 2023 to 29 February 2024 it is 60 days, counted on a calendar.
test.each([
  ['2023-12-31', '2024-02-29', false],
  ['2023-12-30', '2024-02-29', true],
  ['2024-02-29', '2024-02-29', false],
  ['2024-03-01', '2024-02-29', true],
  ['2026-10-28', '2026-12-27', false],
  ['2026-10-28', '2026-12-28', true],
])('a gift to charity valued as of %s and made on %s is warned of: %s', (effective, gift, warned) => {
  expect(on('donation', effective, { giftOn: gift })).toHaveLength(warned ? 1 : 0);
});

test('says how many days it is', () => {
  expect(on('donation', '2023-12-30', { giftOn: '2024-02-29' })[0]).toContain(
    'is 61 days before the gift of 29 February 2024',
  );
});

test('a gift and an estate are held to their day, an estate only where no other is elected', () => {
  expect(on('gift', '2026-05-02', { giftOn: '2026-05-01' })).toHaveLength(1);
  expect(on('gift', '2026-05-01', { giftOn: '2026-05-01' })).toEqual([]);
  expect(on('estate', '2026-05-02', { diedOn: '2026-05-01', alternateDate: 'None.' })).toHaveLength(1);
  expect(on('estate', '2026-05-01', { diedOn: '2026-05-01', alternateDate: 'No' })).toEqual([]);
  expect(on('estate', '2026-11-01', { diedOn: '2026-05-01', alternateDate: 'Yes, by counsel.' })).toEqual([]);
});

test('says nothing of what is blank, is no day, or is another use', () => {
  expect(on('donation', undefined, { giftOn: '2026-05-01' })).toEqual([]);
  expect(on('donation', '2020-01-01', { giftOn: 'next spring' })).toEqual([]);
  expect(on('insurance', '2020-01-01', { giftOn: '2026-05-01' })).toEqual([]);
});
