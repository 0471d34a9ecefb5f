import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { compileKnowledge } from '../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../src/knowledge/readKnowledge.ts';
import { openBrowser } from '../test/browser/support/openBrowser.ts';
import { type Row, weighTimes } from './weighTimes.ts';

/**
 * How long a chair with 60 findings takes to weigh, in Node and in the browser, beside general elimination over the same
 * model in the same run. Use: npx tsx bench/weigh.ts [--no-browser]
 */
async function main(): Promise<void> {
  const { knowledge } = compileKnowledge(
    await readKnowledgeFolder(fileURLToPath(new URL('../knowledge', import.meta.url))),
  );
  if (knowledge === undefined) throw new Error('The knowledge files have faults; run "npm run knowledge".');
  print(
    'Node',
    weighTimes(knowledge, 31, () => performance.now()),
  );
  if (process.argv.includes('--no-browser')) return;
  const entry =
    "import { weighTimes } from './weighTimes.ts'; globalThis.weighTimes = (knowledge) => weighTimes(knowledge, 31, () => performance.now());";
  const bundle = await build({
    stdin: { contents: entry, resolveDir: fileURLToPath(new URL('.', import.meta.url)), loader: 'ts' },
    bundle: true,
    format: 'iife',
    write: false,
  });
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: bundle.outputFiles[0]?.text ?? '' });
    const times = await page.evaluate(
      (given) =>
        (
          globalThis as unknown as { weighTimes: (knowledge: unknown) => ReturnType<typeof weighTimes> }
        ).weighTimes(given),
      knowledge as unknown as object,
    );
    print('Chromium', times);
  } finally {
    await browser.close();
  }
}

function print(
  where: string,
  { rows, furthestApart, findings }: { rows: Row[]; furthestApart: number; findings: number },
): void {
  console.log(
    `\n${where}, ${findings} findings; the two ways of summing are at most ${furthestApart.toExponential(1)} apart`,
  );
  for (const row of rows)
    console.log(`${row.medianMs.toFixed(2).padStart(10)} ms  ${row.what} (median of ${row.runs})`);
}

await main();
