import { describe, expect, it } from 'vitest';
import { axeViolations } from './support/axeViolations.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

const screens = { phone: { width: 360, height: 740 }, desk: { width: 1440, height: 900 } };
const cases = (['light', 'dark'] as const).flatMap((scheme) =>
  (['phone', 'desk'] as const).map((screen) => ({ scheme, screen })),
);

describe.each(cases)('the readings on a $screen in the $scheme', ({ scheme, screen }) => {
  it('have nothing that axe finds wrong with every fold opened, and nothing runs over the edge', async () => {
    const context = await program.browser.newContext({ viewport: screens[screen], colorScheme: scheme });
    const page = await context.newPage();
    await page.goto(`${program.server.address}piece/example-armchair/readings`);
    await page.locator('.read-lead').waitFor({ timeout: 90_000 });
    await page.locator('.read-progress').waitFor({ state: 'detached', timeout: 150_000 });
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    expect(await axeViolations(page)).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
    ).toBe(0);
    await context.close();
  }, 240_000);
});
