import { expect, test } from 'vitest';
import { actsAfterSigning } from './actsAfterSigning.ts';

const sign = { kind: 'opinion-signed' as const, changes: [{ path: ['opinion', 'status'], to: 'signed' }] };
const reopen = { kind: 'opinion-signed' as const, changes: [{ path: ['opinion', 'status'], to: 'draft' }] };
const find = { kind: 'finding-recorded' as const, changes: [{ path: ['findings', 'x'], to: {} }] };
const away = { kind: 'piece-put-away' as const, changes: [{ path: ['putAway'], to: true }] };

test('acts after the last signing are counted, putting away is not', () => {
  expect(actsAfterSigning([find, find])).toBe(0);
  expect(actsAfterSigning([find, sign])).toBe(0);
  expect(actsAfterSigning([find, sign, find, away, find])).toBe(2);
  expect(actsAfterSigning([sign, find, reopen, find, sign, away])).toBe(0);
});
