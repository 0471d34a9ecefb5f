import { describe, expect, it } from 'vitest';
import { faultsInEveryLook } from './support/everyLook.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

describe('the readings, on a phone and a desk, in the light and in the dark', () => {
  it('have nothing that axe finds wrong with every fold opened, and nothing runs over the edge', async () => {
    const page = await program.browser.newPage();
    await page.goto(`${program.server.address}piece/example-armchair/readings`);
    await page.locator('.read-lead').waitFor({ timeout: 90_000 });
    await page.locator('.read-progress').waitFor({ state: 'detached', timeout: 150_000 });
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    expect(await faultsInEveryLook(page)).toEqual([]);
    await page.close();
  }, 240_000);
});
