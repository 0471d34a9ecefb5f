import { rm } from 'node:fs/promises';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './support/openBrowser.ts';
import { allKept, takeOnPiece } from './support/ownPages.ts';
import { startServer, type TestServer } from './support/startServer.ts';

describe('while the server is away', () => {
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
  const startAgain = async () => {
    const { address, dataDir } = used.server;
    used.server = await startServer(dataDir, Number(new URL(address).port));
  };

  test('what is entered is kept, said to wait, and handed in once the server is back', async () => {
    const page = await (await used.browser.newContext()).newPage();
    const id = await takeOnPiece(page, used.server.address, 'Chair in a storage unit');
    await used.server.kill();
    await page.getByLabel('Client', { exact: true }).fill('Mrs Orme');
    await page.getByLabel('Owner', { exact: true }).fill('Her brother');
    await page.getByLabel('Owner', { exact: true }).blur();
    await page.getByText(/^2 entries wait on this device/).waitFor();
    expect(await page.getByLabel('Client', { exact: true }).inputValue()).toBe('Mrs Orme');
    await startAgain();
    await allKept(page);
    expect(await told(used.server, id)).toMatchObject({ client: 'Mrs Orme', owner: 'Her brother' });
    await page.context().close();
  });

  test('what was entered before the tab was closed is handed in by the next one', async () => {
    const context = await used.browser.newContext();
    const page = await context.newPage();
    const id = await takeOnPiece(page, used.server.address, 'Chair and a closed tab');
    await used.server.kill();
    await page.getByLabel('Owner', { exact: true }).fill('The estate');
    await page.getByLabel('Owner', { exact: true }).blur();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByLabel('Owner', { exact: true }).fill('The heirs');
    await page.getByLabel('Owner', { exact: true }).blur();
    await page.getByText(/^3 entries wait on this device/).waitFor();
    await page.close();
    await startAgain();
    const next = await context.newPage();
    await next.goto(`${used.server.address}piece/${id}/history`);
    await allKept(next);
    expect(await told(used.server, id)).toMatchObject({ owner: 'The heirs' });
    await next.getByText('taken back later').waitFor();
    await context.close();
  });
});

async function told(server: TestServer, id: string): Promise<object> {
  const answer = await fetch(`${server.address}api/pieces/${id}`);
  return ((await answer.json()) as { piece: { engagement: object } }).piece.engagement;
}
