import { expect, test } from 'vitest';
import published from '../../test/reference/bayes.json' with { type: 'json' };
import { noisyOr } from './noisyOr.ts';

test.each(published.noisyOr)('$id ($source)', ({ links, leak, present }) => {
  const rows = noisyOr(links, leak);
  expect(rows).toHaveLength(present.length);
  rows.forEach(([effect, none], index) => {
    expect(effect).toBeCloseTo(present[index] as number, 12);
    expect((effect as number) + (none as number)).toBeCloseTo(1, 15);
  });
});

test('a share outside 0 to 1 is a programmer’s slip', () => {
  expect(() => noisyOr([1.2])).toThrow(RangeError);
});
