import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { compileKnowledge } from '../src/knowledge/compileKnowledge.ts';
import { readEntries } from '../src/knowledge/readEntries.ts';
import { readKnowledgeFolder } from '../src/knowledge/readKnowledge.ts';
import { editorSchemas } from './knowledge/editorSchemas.ts';
import { printCounts } from './knowledge/printCounts.ts';
import { printFaults } from './knowledge/printFaults.ts';
import { showEffect } from './knowledge/showEffect.ts';

/** Checks the knowledge files and says everything that is wrong with them at once; see docs/knowledge.md. */
const home = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const { values } = parseArgs({
  options: {
    json: { type: 'string' },
    schema: { type: 'string' },
    effect: { type: 'boolean', default: false },
    against: { type: 'string', default: 'HEAD' },
    folder: { type: 'string', default: join(home, 'knowledge') },
  },
});

const files = await readKnowledgeFolder(values.folder);
const { knowledge, faults } = compileKnowledge(files);
printFaults(faults);
if (knowledge !== undefined) printCounts(knowledge, readEntries(files).entries);
if (faults.length > 0) process.exitCode = 1;

if (values.json !== undefined) {
  if (knowledge === undefined) console.error(`Nothing was written to ${values.json}: mend the faults first.`);
  else await writeFile(values.json, `${JSON.stringify(knowledge)}\n`);
}
if (values.schema !== undefined) {
  await mkdir(values.schema, { recursive: true });
  for (const [name, schema] of Object.entries(editorSchemas()))
    await writeFile(join(values.schema, `${name}.schema.json`), `${JSON.stringify(schema, null, 2)}\n`);
}
if (values.effect && knowledge !== undefined)
  await showEffect(home, knowledge, values.against, new Date().getFullYear());
