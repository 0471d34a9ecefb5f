import { expect, it } from 'vitest';
import { killInTheMix } from '../kits/killInTheMix.ts';

it('nothing acknowledged is lost in 100 kills in the midst of entries, photos, back-ups and signings', async () => {
  const { cutOff, acknowledged } = await killInTheMix(100);
  const { acts, photos, copies, revisions } = acknowledged;
  console.log(
    `acknowledged: ${acts.size} acts, ${photos.size} photos, ${copies.size} back-ups, ${revisions.size} revisions; cut off: ${JSON.stringify(cutOff)}`,
  );
  for (const [kind, times] of Object.entries(cutOff)) expect(times, kind).toBeGreaterThan(3);
});
