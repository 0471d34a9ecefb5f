import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { faultsInEveryLook, overTheEdge, screens } from './support/everyLook.ts';
import { openBrowser } from './support/openBrowser.ts';
import { ownPages, takeOnPiece } from './support/ownPages.ts';
import { startServer, type TestServer } from './support/startServer.ts';

describe('every page of the house', () => {
  const used = {} as { server: TestServer; browser: Browser; page: Page; pieceId: string };
  const refused: string[] = [];
  beforeAll(async () => {
    used.server = await startServer();
    used.browser = await openBrowser();
    // One page goes from address to address: a new one would read the program, and axe, from scratch each time.
    used.page = await used.browser.newPage();
    const { page } = used;
    used.pieceId = await takeOnPiece(page, used.server.address, 'Looked-at chair');
    await page.getByText('An estate').click();
    await page.getByText('Saved', { exact: true }).waitFor();
    page.on('console', (message) => {
      if (/Content Security Policy|Refused to/.test(message.text())) refused.push(message.text());
    });
    page.on('pageerror', (error) => refused.push(error.message));
  });
  beforeEach(() => {
    refused.length = 0;
  });
  afterAll(async () => {
    await used.browser?.close();
    await used.server?.stop();
  });

  test.each(Object.keys(ownPages('any')))(
    '%s: no fault that axe finds, nothing that the policy refuses, and it holds with text twice as large',
    async (name) => {
      const { page } = used;
      await settle(page, used.server.address + ownPages(used.pieceId)[name]);
      expect(await faultsInEveryLook(page, { rules: 'all' })).toEqual([]);
      await page.setViewportSize(screens.phone);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      expect(await overTheEdge(page)).toBe(0);
      expect(refused).toEqual([]);
    },
  );

  test('has faults that are seen where they are planted', async () => {
    const page = await used.browser.newPage();
    await page.setContent(
      '<html lang="en"><title>Planted</title><main><h1>Planted</h1><img src="data:,"><p style="color:#bbb">Pale</p><p style="width:2000px">Wide</p></main>',
    );
    const faults = await faultsInEveryLook(page, { rules: 'all', looks: 'all' });
    expect(faults.map((fault) => fault.replace(/(: [a-z-]+):.*/, '$1'))).toEqual([
      'phone, light: color-contrast',
      'phone, light: image-alt',
      'phone, dark: color-contrast',
      expect.stringMatching(/^phone: \d+ px wider than the screen$/),
      'desk, light: color-contrast',
      'desk, light: image-alt',
      'desk, dark: color-contrast',
      expect.stringMatching(/^desk: \d+ px wider than the screen$/),
    ]);
    expect((await faultsInEveryLook(page)).map((fault) => fault.replace(/(: [a-z-]+):.*/, '$1'))).toEqual([
      'phone, light: color-contrast',
      'phone, light: image-alt',
      expect.stringMatching(/^phone: /),
      'desk, dark: color-contrast',
      'desk, dark: image-alt',
      expect.stringMatching(/^desk: /),
    ]);
    await page.close();
  });

  test('prints every fraction of an inch from its own letters, in both kinds of type', async () => {
    const page = await (await used.browser.newContext()).newPage();
    await settle(page, `${used.server.address}settings`);
    await page.evaluate(async () => {
      const places = ['serif', 'sans'].map((kind) => {
        const place = document.createElement('p');
        place.id = `fractions-${kind}`;
        place.style.fontFamily = `var(--${kind})`;
        place.textContent = '¼½¾⅛⅜⅝⅞';
        return place;
      });
      document.querySelector('main')?.append(...places);
      await document.fonts.ready;
    });
    await page.waitForTimeout(500);
    expect(await fontsOf(page, '#fractions-serif')).toEqual(['Source Serif 4']);
    expect(await fontsOf(page, '#fractions-sans')).toEqual(['Source Sans 3']);
    await page.context().close();
  });

  test('shows light or dark as chosen, whatever the device is set to', async () => {
    const context = await used.browser.newContext({ colorScheme: 'light' });
    const page = await context.newPage();
    await settle(page, `${used.server.address}settings`);
    const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const light = await paper();
    await page.getByText('Dark', { exact: true }).click();
    const dark = await paper();
    expect(dark).not.toBe(light);
    await page.reload();
    await page.getByRole('heading', { name: 'Settings' }).waitFor();
    expect(await paper()).toBe(dark);
    await context.close();
  });
});

/** Opens an address and waits for its heading and its letters. */
async function settle(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.locator('h1').first().waitFor();
  await page.waitForLoadState('networkidle');
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

/** The fonts the browser in fact drew an element with. */
async function fontsOf(page: Page, selector: string): Promise<string[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('DOM.enable');
  await session.send('CSS.enable');
  const { root } = await session.send('DOM.getDocument');
  const { nodeId } = await session.send('DOM.querySelector', { nodeId: root.nodeId, selector });
  const { fonts } = await session.send('CSS.getPlatformFontsForNode', { nodeId });
  return [...new Set(fonts.map((font) => font.familyName.replace(/ (ExtraLight|SemiBold|Regular)$/, '')))];
}
