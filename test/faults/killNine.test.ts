import { describe, it } from 'vitest';
import { killWhileEntering } from '../kits/killWhileEntering.ts';

describe('a program killed while findings and photos are entered', () => {
  // A sample: test/nightly/killNine.test.ts kills a hundred times.
  it('has every acknowledged act and photo after each of 4 kills, and a chain that holds', () =>
    killWhileEntering(4));
});
