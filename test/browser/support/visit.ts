import type { BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';

/** What a visit enters. */
export type Visit = { findings: number; photos: number };

/** Opens the app for the first time and waits until the device has all of it. */
export async function installApp(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(address);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await new Promise((wait) => setTimeout(wait, 20));
  });
  return page;
}

/** Takes a side chair on by its own page; answers its id. Nothing is waited for but the page. */
export async function beginPiece(page: Page, title: string): Promise<string> {
  await page.getByRole('link', { name: 'New piece', exact: true }).first().click();
  await page.getByRole('radio', { name: /^Side chair/ }).check();
  await page.getByLabel('Name of the piece').fill(title);
  await page.getByLabel('Said to be of').fill('1760–1790');
  await page.getByRole('button', { name: 'Open the piece' }).click();
  await page.waitForURL(/\/engagement$/);
  return /piece\/([^/]+)/.exec(page.url())?.[1] ?? '';
}

/** Answers so many signs, part after part: every third present, the others absent; then so many photos. */
export async function enterVisit(page: Page, { findings, photos }: Visit): Promise<void> {
  await page.getByRole('link', { name: 'Examination', exact: true }).click();
  const parts = page.locator('[data-part-button]');
  await parts.first().waitFor();
  const names = await parts.evaluateAll((all) => all.map((one) => one.getAttribute('data-part-button')));
  let answered = 0;
  for (const name of names) {
    if (answered === findings) break;
    await page.locator(`[data-part-button="${name}"]`).click();
    await page.locator('.exam-panel .exam-sign').first().waitFor();
    const signs = await page.locator('.exam-panel .exam-sign').evaluateAll((all) => all.map((one) => one.id));
    for (const sign of signs.slice(0, findings - answered)) {
      const words = answered % 3 === 0 ? 'Present' : 'Absent';
      const button = page.locator(`[id="${sign}"]`).getByRole('button', { name: words, exact: true });
      if ((await button.getAttribute('aria-pressed')) === 'true') continue;
      await button.click();
      answered += 1;
    }
    await page.keyboard.press('Escape');
  }
  if (answered < findings) throw new Error(`only ${answered} signs could be answered`);
  await page.getByRole('tab', { name: /Photos/ }).click();
  const files = await Promise.all(Array.from({ length: photos }, (_, index) => smallPicture(index)));
  await page.locator('.exam-drop input[type=file][multiple]').setInputFiles(files);
}

/** A small picture made here; no two of different numbers have the same bytes. */
async function smallPicture(number: number) {
  const background = { r: 90 + (number % 100), g: 70, b: 40 };
  const buffer = await sharp({ create: { width: 640, height: 480, channels: 3, background } })
    .jpeg()
    .toBuffer();
  return { name: `view-${number}.jpg`, mimeType: 'image/jpeg', buffer };
}
