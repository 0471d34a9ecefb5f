import { expect, it } from 'vitest';
import { purpose } from '../piece/engagement.ts';
import { printedReminders, purposeReminders, reminderSentences } from './purposeReminders.ts';

it('reminds of the days, sums and forms of a gift set against tax in the United States', () => {
  // 26 CFR 1.170A-16(d) and 1.170A-17(a); IRS Publication 561 (January 2023), page 10; instructions of Form 8283.
  const said = reminderSentences('donation').join(' ');
  expect(said).toMatch(/more than \$5,000 .* qualified appraisal .* Form 8283, Section B/);
  expect(said).toMatch(/no earlier than 60 days before the gift/);
  expect(said).toMatch(/Art of \$20,000 or more: the whole signed appraisal is attached/);
});

it('reminds a seller of all that the antique exemption for protected species asks', () => {
  // 16 USC 1539(h) and Director’s Order 210, read in part.
  const said = reminderSentences('sale').join(' ');
  for (const asked of [
    '100 years old',
    'after December 27, 1973',
    'port named for antiques',
    'has to prove it',
    'CITES',
  ])
    expect(said).toContain(asked);
});

it('says of each where to check it, and nothing for a purpose without a rule of its own', () => {
  for (const { check } of Object.values(purposeReminders).flat()) expect(check.length).toBeGreaterThan(10);
  const bare = purpose.options.filter(
    (each) => !['donation', 'sale', 'estate', 'gift', 'wildlife'].includes(each),
  );
  for (const each of [undefined, ...bare]) expect(reminderSentences(each)).toEqual([]);
});

it('hands the document only what was read: no rule on species, which was read in part, and nothing said to be unread', () => {
  expect(printedReminders('donation').join(' ')).toContain('more than $5,000');
  expect(printedReminders('estate').join(' ')).toContain('more than $3,000');
  expect([printedReminders('sale'), printedReminders('wildlife'), printedReminders('gift')]).toEqual([
    [],
    [],
    [],
  ]);
  for (const each of purpose.options)
    expect(printedReminders(each).join(' ')).not.toMatch(/memory|in part only|not read|verified/i);
});
