import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { copyExample } from './support/copyExample.ts';
import { faultsInEveryLook, screens } from './support/everyLook.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

/** Every state of the examination that looks different, one after another. */
const corners: [string, (page: Page) => Promise<void>][] = [
  ['the drawing', async (page) => page.locator('.exam-parts').waitFor()],
  [
    'a part with an answered sign opened',
    async (page) => {
      await page.locator('[data-part-button="splat"]').click();
      await page.locator('.exam-sign [data-sign-name]').first().click();
      await page.locator('.exam-sign').first().getByRole('button', { name: 'Present', exact: true }).click();
      await page.locator('.exam-sign details summary').first().click();
    },
  ],
  ['the keys', async (page) => page.getByRole('button', { name: 'Keyboard shortcuts' }).click()],
  [
    'the plan of the visit',
    async (page) => {
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Plan', exact: true }).click();
    },
  ],
  [
    'the photos',
    async (page) => {
      await page.getByRole('button', { name: 'Less', exact: true }).click();
      await page.getByRole('tab', { name: /Photos/ }).click();
      const buffer = await sharp({ create: { width: 800, height: 600, channels: 3, background: '#806040' } })
        .png()
        .toBuffer();
      await page
        .locator('.exam-drop input[type=file][multiple]')
        .setInputFiles({ name: 'one.png', mimeType: 'image/png', buffer });
      await page.getByText('1 of 1 photos saved.').waitFor();
    },
  ],
  [
    'a photo with a mark',
    async (page) => {
      await page.getByRole('button', { name: /Open Plate 1:/ }).click();
      await page.getByRole('button', { name: 'Point', exact: true }).click();
      await page.keyboard.press('Enter');
      await page.getByLabel('Mark 1 shows').first().waitFor();
    },
  ],
  [
    'the measures with a doubtful one',
    async (page) => {
      await page.getByRole('tab', { name: /Measures/ }).click();
      await page.locator('.exam-measure input').first().fill('2 in');
    },
  ],
];

describe.each(['phone', 'desk'] as const)('the examination on a %s', (only) => {
  it('has nothing that axe finds wrong, and nothing runs over the edge', async () => {
    const context = await program.browser.newContext({ viewport: screens[only] });
    context.setDefaultTimeout(90_000);
    const page = await context.newPage();
    const id = await copyExample(program.server, 'example-armchair');
    await page.goto(`${program.server.address}piece/${id}/examination`);
    const wrong: string[] = [];
    for (const [name, go] of corners) {
      await go(page);
      wrong.push(...(await faultsInEveryLook(page, { only })).map((each) => `${name}: ${each}`));
    }
    expect(wrong).toEqual([]);
    await context.close();
  }, 300_000);
});

describe('targets for a finger', () => {
  it('are 44 pixels or more each way for every answer and every part', async () => {
    const context = await program.browser.newContext({ viewport: screens.phone, hasTouch: true });
    context.setDefaultTimeout(90_000);
    const page = await context.newPage();
    const id = await copyExample(program.server, 'example-armchair');
    await page.goto(`${program.server.address}piece/${id}/examination#splat`);
    await page.locator('.exam-sign').first().waitFor();
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.exam button, .exam [role=tab]')]
        .map((button) => ({ words: button.innerText, box: button.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
        .map(({ words, box }) => `${words} ${box.width}×${box.height}`),
    );
    expect(small).toEqual([]);
    await context.close();
  }, 120_000);
});
