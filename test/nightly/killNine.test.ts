import { describe, it } from 'vitest';
import { killWhileEntering } from '../kits/killWhileEntering.ts';

describe('a program killed while findings and photos are entered', () => {
  it('has every acknowledged act and photo after each of 100 kills, and a chain that holds', () =>
    killWhileEntering(100));
});
