import { expect, test } from 'vitest';
import { provisionalWords } from '../../src/knowledge/isProvisional.ts';
import { workersUnknownWords } from '../../src/knowledge/workersUnknown.ts';
import { shopsInWords } from '../../src/opinion/sections/shopsInWords.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

test('the opinion says whose hands did the work of a place it names, and on whose word', async () => {
  const [words] = shopsInWords(['charleston'], await houseKnowledge());
  expect(words).toMatch(/^Charleston/);
  expect(words).toContain('Enslaved Black craftsmen');
  expect(words).toContain('Double chest, about 1770');
  expect(words).not.toContain(provisionalWords);
  expect(words).not.toContain(workersUnknownWords);
}, 60_000);

test('the opinion says that a file is provisional which rests on no work and no count', async () => {
  const [words] = shopsInWords(['rural-new-england'], await houseKnowledge());
  expect(words).toContain(provisionalWords);
}, 60_000);

test('the opinion says of a place that its workers are not known where nothing was read of them', async () => {
  const [words] = shopsInWords(['scandinavia'], await houseKnowledge());
  expect(words).toMatch(/^Scandinavian/);
  expect(words).toContain(workersUnknownWords);
}, 60_000);

test('a place of which nothing is known has nothing said', async () => {
  expect(shopsInWords(['nowhere'], await houseKnowledge())).toEqual([]);
}, 60_000);
