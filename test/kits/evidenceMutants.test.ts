import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { evidenceMutants, evidenceTests } from './evidenceMutants.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

// By night they are put in and must be seen; by day each must still find the line it makes lie, once, and the tests be there.
it.each(evidenceMutants)('finds where to plant: $name', ({ file, find, replace }) => {
  const text = readFileSync(join(root, file), 'utf8');
  expect(text.split(find)).toHaveLength(2);
  expect(replace).not.toBe(find);
});

it('names tests that there are', () => {
  expect(evidenceTests.filter((path) => !existsSync(join(root, path)))).toEqual([]);
});
