import { loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { compileKnowledge } from '../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../src/knowledge/readKnowledge.ts';
import type { Knowledge } from '../src/knowledge/schema.ts';
import { openBrowser } from '../test/browser/support/openBrowser.ts';
import { loadPeer } from './peer.ts';
import { weighPeers } from './weighPeers.ts';
import { type Row, weighTimes } from './weighTimes.ts';

/** How often the short answers are timed; what takes longer is timed less often. */
const runs = 101;

/**
 * How long a weighing takes, in Node and in a worker of the browser, how the cost grows, and beside it general exact
 * inference over the same model in the same run.
 *
 * Use: npx tsx bench/weigh.ts [--no-browser] [--short] [--peer FOLDER]. Short leaves out how the cost grows and the general
 * inference; FOLDER is one in which bayesjs 0.6.5 was installed.
 */
async function main(): Promise<void> {
  const { knowledge } = compileKnowledge(
    await readKnowledgeFolder(fileURLToPath(new URL('../knowledge', import.meta.url))),
  );
  if (knowledge === undefined) throw new Error('The knowledge files have faults; run "npm run knowledge".');
  const now = () => performance.now();
  console.log(
    `Node ${process.version}; load before the run ${loadavg()[0]?.toFixed(1)} (2 cores: quiet is below 0.3)`,
  );
  const short = process.argv.includes('--short');
  print('Node', weighTimes(knowledge, runs, now, short));
  if (!process.argv.includes('--no-browser'))
    print('Chromium, in a worker', await inBrowser(knowledge, short));
  if (short) return;
  for (const { title, rows } of weighPeers(knowledge, loadPeer(process.argv), now)) {
    console.log(`\n${title}`);
    for (const row of rows)
      console.log(`${line(row)}; readings at most ${row.furthestApart.toExponential(1)} apart`);
  }
}

async function inBrowser(knowledge: Knowledge, short: boolean): Promise<{ title: string; rows: Row[] }[]> {
  const entry = `import { weighTimes } from './weighTimes.ts';
    self.onmessage = ({ data }) => self.postMessage(weighTimes(data, ${runs}, () => performance.now(), ${short}));`;
  const bundle = await build({
    stdin: { contents: entry, resolveDir: fileURLToPath(new URL('.', import.meta.url)), loader: 'ts' },
    bundle: true,
    format: 'iife',
    write: false,
  });
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    return await page.evaluate(
      ({ code, given }) =>
        new Promise<{ title: string; rows: Row[] }[]>((done, fail) => {
          const worker = new Worker(URL.createObjectURL(new Blob([code], { type: 'text/javascript' })));
          worker.onmessage = ({ data }) => done(data);
          worker.onerror = (event) => fail(new Error(event.message));
          worker.postMessage(given);
        }),
      { code: bundle.outputFiles[0]?.text ?? '', given: knowledge as unknown as object },
    );
  } finally {
    await browser.close();
  }
}

function print(where: string, tables: readonly { title: string; rows: readonly Row[] }[]): void {
  for (const { title, rows } of tables) {
    console.log(`\n${where}: ${title}`);
    for (const row of rows) console.log(line(row));
  }
}

function line({ what, medianMs, leastMs, runs }: Row): string {
  return `${medianMs.toFixed(2).padStart(10)} ms  ${what} (median of ${runs}; least ${leastMs.toFixed(2)})`;
}

await main();
