import { expect, it } from 'vitest';
import { changeBytes } from '../kits/changedBytes.ts';

it('finds each of 300 one-byte changes that touch what the record holds, and ends in no error', async () => {
  const { inUse, found, unused, foundUnused } = await changeBytes(300, 7);
  console.log(`in use ${inUse}, found ${found}; not in use ${unused}, of which ${foundUnused} found`);
  expect(inUse).toBeGreaterThan(150);
  expect(found).toBe(inUse);
});
