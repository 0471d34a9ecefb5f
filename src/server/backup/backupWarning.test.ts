import { expect, it } from 'vitest';
import { backupWarning } from './backupWarning.ts';

const day = 86_400_000;
const now = Date.parse('2026-11-30T12:00:00Z');
const fine = { now, firstAct: now - 90 * day, lastCopy: now - day, failed: undefined };

it('says nothing where all is well, nothing is entered, or the record was begun today', () => {
  expect(backupWarning(fine)).toBeUndefined();
  expect(backupWarning({ ...fine, firstAct: undefined, lastCopy: undefined })).toBeUndefined();
  expect(backupWarning({ ...fine, firstAct: now - day + 1, lastCopy: undefined })).toBeUndefined();
});

it('warns where there is none', () => {
  expect(backupWarning({ ...fine, firstAct: now - day, lastCopy: undefined })?.code).toBe('none');
});

it('warns of one older than 7 days, and of no younger one', () => {
  expect(backupWarning({ ...fine, lastCopy: now - 7 * day })).toBeUndefined();
  expect(backupWarning({ ...fine, lastCopy: now - 8 * day })).toEqual({
    code: 'old',
    words: 'The newest back-up is 8 days old.',
  });
});

it('warns where the last attempt failed, and says what is left', () => {
  const failed = { at: now, message: 'The disk is full.' };
  expect(backupWarning({ ...fine, failed })?.words).toBe(
    'The last back-up was not made. The disk is full. The newest back-up is 1 day old.',
  );
  expect(backupWarning({ ...fine, lastCopy: undefined, failed })?.words).toContain(
    'There is no earlier one.',
  );
});
