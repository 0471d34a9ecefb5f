import { expect, it } from 'vitest';
import { listed } from './listed.ts';

it('puts commas between, and one and before the last', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(listed)).toEqual(['', 'a', 'a and b', 'a, b and c']);
});
