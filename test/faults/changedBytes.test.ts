import { expect, it } from 'vitest';
import { changeBytes } from '../kits/changedBytes.ts';

// A sample: test/nightly/changedBytes.test.ts changes three hundred.
it('finds each of 25 one-byte changes that touch what the record holds, and ends in no error', async () => {
  const { inUse, found } = await changeBytes(25, 20261130);
  expect(inUse).toBeGreaterThan(10);
  expect(found).toBe(inUse);
});
