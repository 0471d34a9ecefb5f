import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evidenceWeigh } from '../../src/calculations/evidence.ts';
import { runCalculation } from '../../src/calculations/runCalculation.ts';
import { caseFromPiece } from '../../src/evidence/caseFromPiece.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { makingWords, readingWords } from '../../src/piece/readings.ts';
import { partsInWords } from '../../src/weighing/makingInWords.ts';
import { outOf } from '../../src/weighing/probabilityWords.ts';
import { reasonsOf } from '../../src/weighing/reasons.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';
import { faultsInEveryLook } from './support/everyLook.ts';
import { openBrowser } from './support/openBrowser.ts';
import { pieceOf } from './support/pieceOf.ts';
import { startServer, type TestServer } from './support/startServer.ts';

let server: TestServer;
let browser: Browser;
let knowledge: Knowledge;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  knowledge = (await (await fetch(`${server.address}knowledge.json`)).json()) as Knowledge;
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** The same weighing, made here, without a browser. */
async function weighHere(id: string): Promise<Weighing> {
  const input = { ...caseFromPiece(await pieceOf(server, id)), draws: 500, seed: 1 };
  const result = runCalculation(evidenceWeigh, input, { knowledge, yearNow: new Date().getFullYear() });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.output;
}

/** What went to the page's workers and came back, as the call of functions in workers words it. */
type Said = { asked: { path: string[] }[]; heard: { value?: { ok?: boolean; output?: unknown } }[] };
const saidOn = (page: Page) => page.evaluate(() => (window as unknown as { said: Said }).said);
const timesWeighed = async (page: Page) =>
  (await saidOn(page)).asked.filter(({ path }) => path?.[0] === 'weigh').length;

/** Opens the readings, waits for the redraws, and hands back what the workers answered. */
async function openReadings(page: Page, id: string): Promise<Weighing> {
  await page.addInitScript(() => {
    const said: { asked: unknown[]; heard: unknown[] } = { asked: [], heard: [] };
    Object.assign(window, { said });
    const Plain = window.Worker;
    window.Worker = class extends Plain {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        this.addEventListener('message', (event) => said.heard.push(event.data));
      }
      override postMessage(word: { path: string[] }, hand?: StructuredSerializeOptions | Transferable[]) {
        said.asked.push({ path: word.path });
        super.postMessage(word, hand as Transferable[]);
      }
    };
  });
  await page.goto(`${server.address}piece/${id}/readings`);
  await page.locator('.read-lead').waitFor({ timeout: 90_000 });
  await page.locator('.read-progress').waitFor({ state: 'detached', timeout: 150_000 });
  const { heard } = await saidOn(page);
  return heard.filter(({ value }) => value?.ok !== undefined).at(-1)?.value?.output as Weighing;
}

/** The next looks by name: where two tell alike, the last digit of a sum decides which comes first. */
function inOrder(weighing: Weighing): Weighing {
  const name = (look: Weighing['nextLooks'][number]) => `${look.sign}@${look.part}`;
  return { ...weighing, nextLooks: weighing.nextLooks.toSorted((a, b) => (name(a) < name(b) ? -1 : 1)) };
}

/** Where two answers differ by more than the last digits of a sum; the paths of the differences. */
function differences(a: unknown, b: unknown, path = ''): string[] {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)) ? [] : [path];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return Object.is(a, b) ? [] : [path];
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
  return [...new Set([...Object.keys(left), ...Object.keys(right)])].flatMap((key) =>
    differences(left[key], right[key], `${path}/${key}`),
  );
}

/** One page of the readings for all that is asked of it: the weighing and its redraws are waited for once. */
describe.each(['example-side-chair', 'example-armchair'])('the readings of %s', (id) => {
  const opened = {} as { page: Page; there: Weighing };
  beforeAll(async () => {
    opened.page = await browser.newPage();
    opened.there = await openReadings(opened.page, id);
  }, 240_000);
  afterAll(() => opened.page?.close());

  it('shows what the same calculation gives outside the browser', async () => {
    const { page, there } = opened;
    const here = await weighHere(id);
    expect(differences(inOrder(there), inOrder(here))).toEqual([]);
    expect(await page.locator('.read-lead').getAttribute('data-making')).toBe(here.making.leading);
    expect(await page.locator('.read-lead').innerText()).toContain(
      makingWords[here.making.leading].inSentence,
    );
    const seven = page.locator('.read-leading[data-leading]');
    expect(await seven.getAttribute('data-leading')).toBe(here.leading);
    expect(await seven.innerText()).toContain(readingWords[here.leading].inSentence);
    expect(await page.locator('.read').innerText()).toContain(partsInWords(here));
    expect(await page.locator('.read-card').count()).toBe(here.contradictions.length);
    const { forIt, againstIt, limits, neither } = reasonsOf(here);
    const reasons = [...forIt, ...againstIt, ...limits, ...neither];
    expect(await page.locator('.read-weights > li').count()).toBe(reasons.length);
    expect(reasons.flatMap(({ findings }) => findings)).toHaveLength(here.weights.length);

    expect(await page.locator('.read-weights > li .mark').count()).toBe(here.observations.length);

    await seven.locator('summary').first().click();
    const first = await seven.locator('tbody tr').first().innerText();
    expect(first).toContain(outOf(here.readings[0]?.probability ?? 0));
    for (const [, count, of] of (await page.locator('.read').innerText()).matchAll(
      /(\d+) in (1000|100)\b/g,
    )) {
      expect(Number(count) / Number(of)).toBeLessThanOrEqual(0.999);
      expect(Number(count) / Number(of)).toBeGreaterThanOrEqual(0.001);
    }
  }, 240_000);

  it('shows how the answer moves with the starting odds, and that the examiner decides', async () => {
    const { page, there } = opened;
    expect(there.byStartingOdds.length).toBeGreaterThanOrEqual(3);
    const text = await page.locator('.read').innerText();
    for (const { odds } of there.byStartingOdds)
      expect(text).toContain(knowledge.making.startingOdds[odds]?.name ?? odds);
    expect(text).toContain('The program weighs; the examiner decides.');
  }, 240_000);

  it('are weighed once for all pages of the piece', async () => {
    const { page } = opened;
    expect(await timesWeighed(page)).toBe(2);
    for (const [name, shows] of [
      ['Opinion', '.opinion-says .said'],
      ['Examination', '.exam-next-line button'],
      ['Readings', '.read-lead'],
    ] as const) {
      await page.getByRole('link', { name, exact: true }).click();
      await page.locator(shows).first().waitFor();
    }
    // Longer than the rest of the hand after which a weighing would begin.
    await page.waitForTimeout(1000);
    expect(await page.locator('.read-progress').count()).toBe(0);
    expect(await timesWeighed(page)).toBe(2);
  }, 240_000);

  if (id !== 'example-armchair') return;

  it('have nothing that axe finds wrong with every fold opened, on a phone and a desk', async () => {
    const { page } = opened;
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    expect(await faultsInEveryLook(page)).toEqual([]);
  }, 240_000);

  it('show the habit that a shop explains as explained, with what it now speaks for, and lead back to the look', async () => {
    const { page } = opened;
    const card = page.locator('.read-card[data-explained]').filter({ hasText: 'Alder Ferry' }).first();
    expect(await card.innerText()).toMatch(
      /If no shop’s file were known it would speak .* for a later piece .*; with the file it speaks .* for a period piece/,
    );
    await card.getByRole('link', { name: 'Look at it again' }).click();
    await page.locator('.exam-panel').waitFor();
    expect(page.url()).toContain('/examination#');
  }, 240_000);
});
