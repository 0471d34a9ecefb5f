import { describe, expect, it } from 'vitest';
import { killWhileSigning } from '../kits/killWhileSigning.ts';

describe('a program killed while a revision is signed', () => {
  it('loses no acknowledged signing in 60 kills, and cuts off some at every stage', async () => {
    const { acknowledged, revisions, cutOff } = await killWhileSigning(60);
    expect(revisions).toBeGreaterThanOrEqual(acknowledged);
    expect(cutOff).toBeGreaterThan(10);
  });
});
