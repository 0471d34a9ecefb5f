import { expect, it } from 'vitest';
import { contradictionBelowWords } from './contradictionBelow.ts';

it('says by the one scale how improbable a finding must be not to fit', () => {
  expect(contradictionBelowWords()).toBe('improbable (below 10 in 100)');
});
