import { expect, it } from 'vitest';
import { names } from '../drawer/drawer.ts';
import { readVisit } from './keptVisit.ts';

/** The visit read from a store that has this text of it. */
const visitFrom = (text: string) =>
  readVisit('p', { getItem: (name: string) => (name === names.visit('p') ? text : null) } as Storage);

it('reads a kept visit, and nothing from what is damaged', () => {
  expect(visitFrom('{"minutes":10,"mayNot":["turned-over"]}')).toEqual({
    minutes: 10,
    mayNot: ['turned-over'],
    suspected: undefined,
  });
  expect(visitFrom('{"mayNot":[],"suspected":"arms-added"}')).toEqual({
    minutes: undefined,
    mayNot: [],
    suspected: 'arms-added',
  });
  expect(visitFrom('{"minutes":-1,"mayNot":[]}')).toBeUndefined();
  expect(visitFrom('{"mayNot":["flown"]}')).toBeUndefined();
  expect(visitFrom('half a')).toBeUndefined();
});
