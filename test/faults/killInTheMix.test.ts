import { expect, it } from 'vitest';
import { killInTheMix } from '../kits/killInTheMix.ts';

// A sample: test/nightly/killNine.test.ts kills a hundred times.
it('nothing acknowledged is lost in 2 kills in the midst of entries, photos, back-ups and signings', async () => {
  const { acknowledged } = await killInTheMix(2);
  expect(acknowledged.copies.size).toBeGreaterThan(0);
  expect(acknowledged.revisions.size).toBeGreaterThan(0);
}, 300_000);
