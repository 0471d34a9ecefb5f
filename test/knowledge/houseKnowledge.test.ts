import { expect, test } from 'vitest';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../../src/knowledge/readKnowledge.ts';

test('the knowledge of the house has no fault', async () => {
  const { knowledge, faults } = compileKnowledge(await readKnowledgeFolder('knowledge'));
  expect(faults.map((fault) => `${fault.file}:${fault.line} ${fault.entry} ${fault.what}`)).toEqual([]);
  // It goes to the screens as JSON and must come out the same.
  expect(JSON.parse(JSON.stringify(knowledge))).toEqual(knowledge);
});
