import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './support/openBrowser.ts';
import { allKept } from './support/ownPages.ts';
import { startServer, type TestServer } from './support/startServer.ts';

describe('by keyboard alone', () => {
  const used = {} as { server: TestServer; browser: Browser };
  beforeAll(async () => {
    used.server = await startServer();
    used.browser = await openBrowser();
  });
  afterAll(async () => {
    await used.browser?.close();
    await used.server?.stop();
  });

  test('a piece is taken on, named, described, and its last act taken back', async () => {
    const page = await (await used.browser.newContext()).newPage();
    await page.goto(used.server.address);
    await page.getByRole('heading', { name: 'Worked examples, invented' }).waitFor();
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('Skip to the page');
    await page.keyboard.press('Enter');
    await tabTo(page, 'New piece');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'New piece' }).waitFor();

    await tabTo(page, 'Open the piece');
    await page.keyboard.press('Enter');
    await page.getByText('Choose the form first').waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'New piece' }).waitFor();
    await tabToStart(page, 'Armchair');
    await page.keyboard.press('Space');
    await tabTo(page, 'Name of the piece');
    await page.keyboard.type('Keyboard chair');
    await tabTo(page, 'Open the piece');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/engagement$/);
    await allKept(page);

    await tabTo(page, 'To know what it is');
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowDown');
    await allKept(page);
    expect(await focused(page)).toBe('Insurance: what a replacement costs');
    await page.getByText('The policy says what worth is insured').waitFor();

    await tabTo(page, 'Undo', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByRole('radio', { name: 'To know what it is' }).isChecked()).toBe(true);
    await page.context().close();
  });

  test('whatever has the focus shows it', async () => {
    const page = await (await used.browser.newContext({ viewport: { width: 360, height: 740 } })).newPage();
    await page.goto(`${used.server.address}new`);
    await page.getByRole('heading', { name: 'New piece' }).waitFor();
    const unmarked: string[] = [];
    for (let turn = 0; turn < 11; turn += 1) {
      await page.keyboard.press('Tab');
      const ring = await page.evaluate(() => {
        const here = document.activeElement;
        const shown = here?.closest('.choice') ?? here;
        return shown === null ? 'none' : getComputedStyle(shown).outlineStyle;
      });
      if (ring === 'none') unmarked.push(await focused(page));
    }
    expect(unmarked).toEqual([]);
    await page.context().close();
  });
});

/** Presses Tab until something whose name starts so has the focus. */
async function tabToStart(page: Page, start: string): Promise<void> {
  for (let turn = 0; turn < 80; turn += 1) {
    if ((await focused(page)).startsWith(start)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Nothing that starts with “${start}” can be reached with Tab.`);
}

/** Presses Tab until the thing of that name has the focus. */
async function tabTo(page: Page, name: string, key = 'Tab'): Promise<void> {
  for (let turn = 0; turn < 80; turn += 1) {
    if ((await focused(page)) === name) return;
    await page.keyboard.press(key);
  }
  throw new Error(`Nothing called “${name}” can be reached with ${key}.`);
}

/** What a reader would call the thing that has the focus. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const here = document.activeElement;
    const label =
      here instanceof HTMLInputElement || here instanceof HTMLTextAreaElement ? here.labels?.[0] : here;
    return label?.textContent?.trim() ?? '';
  });
}
