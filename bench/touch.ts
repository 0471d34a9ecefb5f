import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { caseFromPiece } from '../src/evidence/caseFromPiece.ts';
import { compileKnowledge } from '../src/knowledge/compileKnowledge.ts';
import { readKnowledgeFolder } from '../src/knowledge/readKnowledge.ts';
import type { Knowledge } from '../src/knowledge/schema.ts';
import { Kept } from '../src/summation/kept.ts';
import { weighCase } from '../src/weighing/weighCase.ts';
import { openBrowser } from '../test/browser/support/openBrowser.ts';
import { pieceOf } from '../test/browser/support/pieceOf.ts';
import { startServer, type TestServer } from '../test/browser/support/startServer.ts';
import { act } from '../test/kits/drafts.ts';
import { sideboardCase } from './drawnCase.ts';
import { keepTimes, type Touch, tellTimes } from './touchTimes.ts';

const touches = 30;
const pauseMs = 1000 * Number(process.argv[2] ?? 0);
const id = 'bench-sideboard';
/** The runner of this file keeps the names of functions by a helper, which a page does not have. */
const namesKept = 'globalThis.__name = (named) => named;\n';

/**
 * How long one more finding on a sideboard with 150 takes until readings, years and parts are there, and until all is weighed: in the
 * built program, in Chromium, by its own buttons; beside it the same findings one after another in Node, in the same run.
 *
 * Use: npm run build, then npx tsx bench/touch.ts [SECONDS], the pause between two touches, none when left out
 */
async function main(): Promise<void> {
  const { knowledge } = compileKnowledge(
    await readKnowledgeFolder(fileURLToPath(new URL('../knowledge', import.meta.url))),
  );
  if (knowledge === undefined) throw new Error('The knowledge files have faults; run "npm run knowledge".');
  const [server, browser] = await Promise.all([startServer(), openBrowser()]);
  try {
    const parts = await makeSideboard(server, knowledge);
    console.log(
      `${cpus()[0]?.model ?? 'unknown machine'}, ${cpus().length} cores, Node ${process.version}, Chromium ${browser.version()}; load before the run ${loadavg()[0]?.toFixed(1)}`,
    );
    const times = await touchAll(browser, server, parts);
    const { findings } = await pieceOf(server, id);
    console.log(
      `Sideboard, ${Object.keys(findings).length - times.length} findings, then ${times.length} more`,
    );
    say(
      'in the worker: readings, years and parts',
      times.map(({ first }) => first),
    );
    say(
      'in the worker: and all weights, reasons, contradictions',
      times.map(({ whole }) => whole),
    );
    say(
      'in the page: from the touch until the first answer came',
      times.map(({ came }) => came),
    );
    say(
      'in the page: and until it was drawn',
      times.map(({ drawn }) => drawn),
    );
    const node = inNode(knowledge, caseFromPiece(await pieceOf(server, id)));
    say(
      'Node, the same: readings, years and parts',
      node.map(({ first }) => first),
    );
    say(
      'Node, the same: and all weights, reasons, contradictions',
      node.map(({ whole }) => whole),
    );
  } finally {
    await browser.close();
    await server.stop();
  }
}

/** Records the sideboard by the program's own door; answers the parts that findings lie on. */
async function makeSideboard(server: TestServer, knowledge: Knowledge): Promise<string[]> {
  const drawn = sideboardCase(knowledge);
  const events = [
    act(id, 'piece-opened', [{ path: [], to: { id, form: 'sideboard', title: 'A sideboard (invented)' } }]),
    ...drawn.findings.map(({ sign, part, state, sure }) => {
      const key = part === undefined ? sign : `${sign}@${part}`;
      const to = {
        id: key,
        sign,
        ...(part === undefined ? {} : { part }),
        state,
        ...(sure === undefined ? {} : { sure }),
      };
      return act(id, 'finding-recorded', [{ path: ['findings', key], to }]);
    }),
  ];
  const answer = await fetch(`${server.address}api/pieces/${id}/events`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'x-underside': '1',
      origin: new URL(server.address).origin,
    },
    body: JSON.stringify({ events }),
  });
  if (!answer.ok) throw new Error(`The sideboard was refused: ${answer.status} ${await answer.text()}`);
  return [...new Set(drawn.findings.flatMap(({ part }) => (part === undefined ? [] : [part])))];
}

/** Touches one open sign after another, on all parts in turn, each when the one before is weighed. */
async function touchAll(browser: Browser, server: TestServer, parts: readonly string[]): Promise<Touch[]> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.addInitScript({ content: namesKept });
  await page.addInitScript(keepTimes);
  await page.route(/\/assets\/worker-.*\.js$/, async (route) => {
    const answer = await route.fetch();
    await route.fulfill({
      response: answer,
      body: `${namesKept}(${tellTimes.toString()})();\n${await answer.text()}`,
    });
  });
  await page.goto(`${server.address}piece/${id}/examination`);
  await timesOf(page, 1);
  const before = (await timesOf(page, 1)).length;
  for (let n = 0, done = 0; done < touches && n < 10 * touches; n++)
    if (await touch(page, parts[n % parts.length] as string)) {
      await timesOf(page, before + ++done);
      await new Promise((resolve) => setTimeout(resolve, pauseMs));
    }
  return (await timesOf(page, before)).slice(before);
}

/** Answers the first open sign of a part; false where it has none left. */
async function touch(page: Page, part: string): Promise<boolean> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, part);
  await page.locator(`[data-part-button="${part}"][aria-pressed="true"]`).waitFor();
  return page.evaluate(() => {
    const row = document.querySelector('.exam-sign:not([data-state])');
    const buttons = [...(row?.querySelectorAll('button') ?? [])];
    const absent = buttons.find((button) => button.textContent?.trim() === 'Absent');
    absent?.click();
    return absent !== undefined;
  });
}

/** The times that were taken, once there are so many. */
async function timesOf(page: Page, wanted: number): Promise<Touch[]> {
  const kept = await page.waitForFunction(
    (least) => {
      const { touchTimes } = window as unknown as { touchTimes: Touch[] };
      return touchTimes.length >= least ? touchTimes : undefined;
    },
    wanted,
    { timeout: 60_000 },
  );
  return (await kept.jsonValue()) as Touch[];
}

function inNode(
  knowledge: Knowledge,
  input: ReturnType<typeof caseFromPiece>,
): Pick<Touch, 'first' | 'whole'>[] {
  const kept = new Kept();
  return Array.from({ length: touches }, (_, touch) => {
    const findings = input.findings.slice(0, input.findings.length - touches + touch + 1);
    const from = performance.now();
    let first = Number.NaN;
    const onFirst = () => {
      first = performance.now() - from;
    };
    weighCase({ ...input, findings, draws: 0, quick: true }, knowledge, { yearNow: 2026, onFirst, kept });
    return { first, whole: performance.now() - from };
  });
}

function say(what: string, times: readonly number[]): void {
  const rising = times.toSorted((a, b) => a - b);
  const at = (share: number) => (rising[Math.floor(share * (rising.length - 1))] as number).toFixed(1);
  console.log(
    `${at(0.5).padStart(8)} ms  ${what} (median of ${times.length}; least ${at(0)}, 9 in 10 under ${at(0.9)})`,
  );
}

await main();
