import { describe, it } from 'vitest';
import { changeIssuedBytes } from '../kits/changedIssuedBytes.ts';

describe('one byte changed behind the program’s back', () => {
  it('is found in a report, a stored revision and a photo, 1,000 times of 1,000 each', () =>
    changeIssuedBytes(1000));
});
