import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { inputsHash, readStamps } from '../../scripts/buildStamps.mjs';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import { ownNamesOnly } from '../../src/knowledge/ownNamesOnly.ts';
import { readKnowledgeFolder } from '../../src/knowledge/readKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';

const home = fileURLToPath(new URL('../..', import.meta.url));
/** What the build makes the compiled knowledge from: see scripts/build.mjs. */
const madeFrom = ['knowledge', 'src/knowledge', 'src/piece', 'src/units', 'scripts/build.mjs'];

let read: Promise<Knowledge> | undefined;

/** The knowledge files of the house, compiled: read once for all tests of a process, from the build where that is up to date. */
export function houseKnowledge(): Promise<Knowledge> {
  read ??= built().then((knowledge) => knowledge ?? compiled());
  return read;
}

async function built(): Promise<Knowledge | undefined> {
  const [stamps, hash] = await Promise.all([readStamps(`${home}dist`), inputsHash(home, madeFrom)]);
  if (stamps.knowledge !== hash) return undefined;
  return ownNamesOnly(JSON.parse(await readFile(`${home}dist/knowledge.json`, 'utf8')) as Knowledge);
}

async function compiled(): Promise<Knowledge> {
  const { knowledge, faults } = compileKnowledge(await readKnowledgeFolder(`${home}knowledge`));
  if (knowledge === undefined) throw new Error(`the knowledge has ${faults.length} faults`);
  return knowledge;
}
