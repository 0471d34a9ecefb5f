import { expect, test } from 'vitest';
import { areWorkersUnknown } from './workersUnknown.ts';

const told = { words: 'Journeymen.', sources: [], by: 'from memory' as const };

test('it is said of a real place whose workers are not told, and of no other', () => {
  expect(areWorkersUnknown({ whoWorked: undefined, invented: false })).toBe(true);
  expect(areWorkersUnknown({ whoWorked: told, invented: false })).toBe(false);
  expect(areWorkersUnknown({ whoWorked: undefined, invented: true })).toBe(false);
});
