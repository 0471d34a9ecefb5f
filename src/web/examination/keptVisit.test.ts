import { expect, it } from 'vitest';
import { visitFrom } from './keptVisit.ts';

it('reads a kept visit, and nothing from what is damaged', () => {
  expect(visitFrom('{"minutes":10,"mayNot":["turned-over"]}')).toEqual({
    minutes: 10,
    mayNot: ['turned-over'],
  });
  expect(visitFrom('{"mayNot":[]}')).toEqual({ minutes: undefined, mayNot: [] });
  expect(visitFrom('{"minutes":-1,"mayNot":[]}')).toBeUndefined();
  expect(visitFrom('{"mayNot":["flown"]}')).toBeUndefined();
  expect(visitFrom('half a')).toBeUndefined();
});
