import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../../src/knowledge/readKnowledge.ts';
import { type Judged, judgeCase } from './judgeCase.ts';
import { readPublishedCases } from './publishedCases.ts';
import { summarize } from './summary.ts';
import { validationPage } from './validationPage.ts';

/**
 * Weighs published cases and says how often the reading met the verdict in print.
 *
 * Use: npm run validate [-- CASES MAPPING]. Without files it takes the chairs of test/reference and writes
 * docs/validation.md. The last line printed is one line of JSON.
 */
async function main(args: string[]): Promise<void> {
  const root = new URL('../../', import.meta.url);
  const at = (path: string) => fileURLToPath(new URL(path, root));
  const own = args.length === 0;
  const casesFile = args[0] ?? at('test/reference/published-chairs.json');
  const mappingFile = args[1] ?? at('test/reference/published-chairs-mapping.json');
  const { knowledge, faults } = compileKnowledge(await readKnowledgeFolder(at('knowledge')));
  if (knowledge === undefined)
    throw new Error(`The knowledge files have ${faults.length} faults; run "npm run knowledge" to see them.`);
  const { cases, mapping } = await readPublishedCases(casesFile, mappingFile);
  const yearNow = new Date().getFullYear();
  const judged: Judged[] = [];
  for (const each of cases) {
    const mapped = mapping[each.id];
    if (mapped === undefined) console.log(`${each.id}: not mapped, left out.`);
    else if (knowledge.forms[mapped.form] === undefined)
      console.log(`${each.id}: the form "${mapped.form}" is not known yet, left out.`);
    else judged.push(judgeCase(each, mapped, knowledge, yearNow));
  }
  const page = validationPage(judged, cases, mapping, knowledge);
  if (own) await writeFile(at('docs/validation.md'), page);
  else console.log(page);
  console.log(JSON.stringify(summarize(judged)));
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
});
