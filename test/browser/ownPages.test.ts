import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './support/openBrowser.ts';
import { ownPages, takeOnPiece } from './support/ownPages.ts';
import { startServer, type TestServer } from './support/startServer.ts';

const widths = { phone: { width: 360, height: 740 }, desk: { width: 1440, height: 900 } };

describe('every page of the house', () => {
  const used = {} as { server: TestServer; browser: Browser; pieceId: string };
  beforeAll(async () => {
    used.server = await startServer();
    used.browser = await openBrowser();
    const page = await (await used.browser.newContext()).newPage();
    used.pieceId = await takeOnPiece(page, used.server.address, 'Looked-at chair');
    await page.getByText('An estate').click();
    await page.getByText('Saved', { exact: true }).waitFor();
    await page.context().close();
  });
  afterAll(async () => {
    await used.browser?.close();
    await used.server?.stop();
  });

  for (const [width, viewport] of Object.entries(widths)) {
    for (const colorScheme of ['light', 'dark'] as const) {
      test(`has no fault that axe finds, and nothing that the policy refuses: ${width}, ${colorScheme}`, async () => {
        const context = await used.browser.newContext({ viewport, colorScheme });
        const page = await context.newPage();
        const refused: string[] = [];
        page.on('console', (message) => {
          if (/Content Security Policy|Refused to/.test(message.text())) refused.push(message.text());
        });
        page.on('pageerror', (error) => refused.push(error.message));
        const faults: string[] = [];
        for (const [name, path] of Object.entries(ownPages(used.pieceId))) {
          await settle(page, used.server.address + path);
          const { violations } = await new AxeBuilder({ page }).analyze();
          faults.push(
            ...violations.map((one) => `${name}: ${one.id}: ${one.nodes.map((node) => node.html).join(' ')}`),
          );
        }
        expect(faults).toEqual([]);
        expect(refused).toEqual([]);
        await context.close();
      }, 180_000);
    }
  }

  test('holds with text of 200 % on a screen of 360 pixels', async () => {
    const context = await used.browser.newContext({ viewport: widths.phone });
    const page = await context.newPage();
    const wide: string[] = [];
    for (const [name, path] of Object.entries(ownPages(used.pieceId))) {
      await settle(page, used.server.address + path);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      if (over > 0) wide.push(`${name} is ${over} pixels too wide`);
    }
    expect(wide).toEqual([]);
    await context.close();
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
