import { describe, expect, it } from 'vitest';
import { killWhileSigning } from '../kits/killWhileSigning.ts';

describe('a program killed while a revision is signed', () => {
  it('loses no acknowledged signing in 2 kills', async () => {
    const { acknowledged, revisions } = await killWhileSigning(2);
    expect(acknowledged).toBeGreaterThanOrEqual(1);
    expect(revisions).toBeGreaterThanOrEqual(acknowledged);
  });
});
