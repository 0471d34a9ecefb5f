import { expect, test } from 'vitest';
import { isProvisional } from './isProvisional.ts';

const habit = { sign: 'hidden-wood-oak', shows: { in100: '80, 60–90' } };
const bare = { habits: [habit, habit], sources: [] };

test('a file that cites no work and counts nothing is provisional', () => {
  expect(isProvisional(bare)).toBe(true);
});

test('one work, wherever it is cited, or one count, and it is not', () => {
  const counts = { seen: 2, of: 8, where: 'published records', source: 'museum-woods' };
  const cited = { ...habit, shows: { ...habit.shows, source: 'jones-norfolk' } };
  const counted = { ...habit, shows: { ...habit.shows, counts } };
  expect(isProvisional({ ...bare, sources: ['jones-norfolk'] })).toBe(false);
  expect(isProvisional({ ...bare, basis: { source: 'jones-norfolk', why: 'Read.' } })).toBe(false);
  expect(isProvisional({ ...bare, habits: [habit, cited] })).toBe(false);
  expect(isProvisional({ ...bare, habits: [habit, counted] })).toBe(false);
});
