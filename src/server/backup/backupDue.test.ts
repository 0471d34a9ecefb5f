import { expect, it } from 'vitest';
import { backupDue } from './backupDue.ts';

const at = (text: string) => Date.parse(`2026-11-30T${text}`);
const moments = {
  now: at('12:00:00'),
  lastCopy: at('09:00:00'),
  lastWrite: at('08:00:00'),
  lastFailure: undefined,
};

it('is due once a day, when nothing was written for two minutes', () => {
  const yesterday = { ...moments, lastCopy: Date.parse('2026-11-29T18:00:00') };
  expect(backupDue(yesterday)).toBe('daily');
  expect(backupDue({ ...yesterday, lastCopy: undefined })).toBe('daily');
  expect(backupDue({ ...yesterday, lastWrite: at('11:59:00') })).toBeUndefined();
  expect(backupDue(moments)).toBeUndefined();
});

it('is due after work, at a quarter of an hour of rest', () => {
  expect(backupDue({ ...moments, lastWrite: at('11:45:00') })).toBe('after-work');
  expect(backupDue({ ...moments, lastWrite: at('11:46:00') })).toBeUndefined();
});

it('waits an hour after it failed', () => {
  const due = { ...moments, lastCopy: undefined };
  expect(backupDue({ ...due, lastFailure: at('11:01:00') })).toBeUndefined();
  expect(backupDue({ ...due, lastFailure: at('11:00:00') })).toBe('daily');
});
