import { rm } from 'node:fs/promises';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './support/openBrowser.ts';
import { allKept, takeOnPiece } from './support/ownPages.ts';
import { startServer, type TestServer } from './support/startServer.ts';

describe('what is typed', () => {
  const used = {} as { server: TestServer; browser: Browser };
  beforeAll(async () => {
    used.server = await startServer();
    used.browser = await openBrowser();
  });
  afterAll(async () => {
    await used.browser?.close();
    await used.server?.stop();
    if (used.server !== undefined) await rm(used.server.dataDir, { recursive: true, force: true });
  });

  test('is there after a reload within 50 ms, in fields of words, years, lengths and numbers', async () => {
    const page = await (await used.browser.newContext()).newPage();
    const id = await takeOnPiece(page, used.server.address, 'Chair in a hurry');
    const client = page.getByLabel('Client', { exact: true });
    const reloaded = async () => {
      const left = Date.now();
      await page.reload();
      return left;
    };
    await client.click();
    await page.keyboard.insertText('Mrs Orme');
    const typed = Date.now();
    expect((await reloaded()) - typed).toBeLessThan(50);
    await expect.poll(() => client.inputValue()).toBe('Mrs Orme');
    await allKept(page);
    expect(await engagement(used.server, id)).toMatchObject({ client: 'Mrs Orme' });

    // Without a word to the page that it is left: as when the browser is ended.
    await client.fill('Mrs Orme and her sister');
    await page.evaluate(() => {
      window.addEventListener('pagehide', (event) => event.stopImmediatePropagation(), { capture: true });
    });
    await client.press('!');
    await reloaded();
    await expect.poll(() => client.inputValue()).toBe('Mrs Orme and her sister!');

    await page.goto(`${used.server.address}piece/${id}/bench#movement`);
    const width = page.getByLabel('Width across the grain');
    await width.fill('28 1/2');
    await reloaded();
    await expect.poll(() => width.inputValue()).toBe('28 1/2');
    await page.context().close();
  });

  test('two pages that change one field are told of it, and one touch settles it', async () => {
    const context = await used.browser.newContext();
    const first = await context.newPage();
    const id = await takeOnPiece(first, used.server.address, 'Chair of two hands');
    const other = await (await used.browser.newContext()).newPage();
    await other.goto(`${used.server.address}piece/${id}/engagement`);
    await other.getByLabel('Client', { exact: true }).waitFor();
    await first.getByLabel('Client', { exact: true }).fill('Mrs Orme');
    await first.getByLabel('Client', { exact: true }).blur();
    await allKept(first);
    await other.getByLabel('Client', { exact: true }).fill('Mr Orme');
    await other.getByLabel('Client', { exact: true }).blur();
    const notice = other.getByRole('region', { name: 'Changed in two places at once' });
    await notice.getByRole('button', { name: 'Keep it: Mr Orme' }).waitFor();
    await notice.getByRole('button', { name: 'Put it back: Mrs Orme' }).click();
    await notice.waitFor({ state: 'detached' });
    await allKept(other);
    expect(await engagement(used.server, id)).toMatchObject({ client: 'Mrs Orme' });
    await context.close();
    await other.context().close();
  });
});

async function engagement(server: TestServer, id: string): Promise<object> {
  const answer = await fetch(`${server.address}api/pieces/${id}`);
  return ((await answer.json()) as { piece: { engagement: object } }).piece.engagement;
}
