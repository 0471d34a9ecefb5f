import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compileKnowledge } from '../knowledge/compileKnowledge.ts';
import { ownNamesOnly } from '../knowledge/ownNamesOnly.ts';
import { readKnowledgeFolder } from '../knowledge/readKnowledge.ts';
import type { Knowledge } from '../knowledge/schema.ts';

/**
 * The knowledge: as it was compiled beside this program, else from the knowledge files.
 *
 * @returns the knowledge, or one line for each thing that stands in the way
 */
export async function loadKnowledge(): Promise<
  { ok: true; knowledge: Knowledge } | { ok: false; lines: string[] }
> {
  const here = dirname(fileURLToPath(import.meta.url));
  const compiled = join(here, 'knowledge.json');
  if (existsSync(compiled))
    return { ok: true, knowledge: ownNamesOnly(JSON.parse(await readFile(compiled, 'utf8')) as Knowledge) };
  const folder = [join(here, '..', 'knowledge'), join(here, '..', '..', 'knowledge')].find((each) =>
    existsSync(join(each, 'sources.yaml')),
  );
  if (!folder)
    return {
      ok: false,
      lines: ['The knowledge files are missing: reinstall the program, or run npm run build.'],
    };
  const { knowledge, faults } = compileKnowledge(await readKnowledgeFolder(folder));
  if (knowledge && faults.length === 0) return { ok: true, knowledge };
  return {
    ok: false,
    lines: [
      `The knowledge files have ${faults.length === 1 ? 'a fault' : `${faults.length} faults`}: npm run knowledge lists them all.`,
    ],
  };
}
