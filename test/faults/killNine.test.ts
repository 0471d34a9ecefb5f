import { describe, expect, it } from 'vitest';
import { killWhileEntering } from '../kits/killWhileEntering.ts';

describe('a program killed while findings and photos are entered', () => {
  // A sample: test/nightly/killNine.test.ts kills a hundred times, in the midst of back-ups and signings too.
  it('has every acknowledged act and photo after each of 3 kills, and a chain that holds', () =>
    killWhileEntering(3).then(({ acknowledged }) => {
      expect(acknowledged.acts.size).toBeGreaterThan(8);
      expect(acknowledged.photos.size).toBeGreaterThan(2);
    }));
});
