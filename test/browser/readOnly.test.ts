import { join } from 'node:path';
import { expect, it } from 'vitest';
import { copyExample } from './support/copyExample.ts';
import { faultsInEveryLook } from './support/everyLook.ts';
import { openProgram } from './support/program.ts';
import { startServer } from './support/startServer.ts';

const program = openProgram();
const looks = process.env.LOOKS;

/** Names of controls that record something. */
const records =
  /^(New piece|Archive|Bring back|Make a copy to edit|Undo|Redo|Back up now|Begin revision|Sign|Add |Change|Remove|Take a photo|Choose |Keep|Put back|Draft it|Bring in)/;

it('a record that is only looked at shows all it has, says on every page that it takes nothing, and offers nothing that would record', async () => {
  const { server, browser } = program;
  const id = await copyExample(server, 'example-armchair');
  const second = await startServer(server.dataDir);
  try {
    const page = await browser.newPage({ viewport: { width: 390, height: 800 } });
    const writes: string[] = [];
    page.on('request', (request) => {
      const { pathname } = new URL(request.url());
      if (request.method() !== 'GET' && !/^\/api\/calc\/|\/(opinion|file)$/.test(pathname))
        writes.push(`${request.method()} ${pathname}`);
    });
    const band = page.getByRole('complementary', { name: 'Read-only' });
    const offered = async () => {
      const names = await page
        .locator('button:not([disabled]), a.button, input[type=file]:not([disabled])')
        .evaluateAll((all) =>
          all.map((one) => (one.getAttribute('aria-label') ?? one.textContent ?? '').trim()),
        );
      return names.filter((name) => records.test(name));
    };
    const open = async (address: string) => {
      await page.goto(address);
      await page.locator('main').locator('h1, h2, [role=tab], .bench').first().waitFor();
      await page.getByText(/^(One moment|Fetching .*)$/).waitFor({ state: 'detached' });
      if (address.endsWith('/examination')) await page.getByRole('tab', { name: /^Photos/ }).click();
      await page.waitForLoadState('networkidle');
    };
    // The same look at the program that takes entries finds what it is there to find.
    for (const path of ['', `piece/${id}/examination`, 'settings']) {
      await open(server.address + path);
      expect(await offered(), path).not.toEqual([]);
    }
    writes.length = 0;
    for (const [name, path] of [
      ['pieces', ''],
      ['new', 'new'],
      ['examination', `piece/${id}/examination`],
      ['opinion', `piece/${id}/opinion`],
      ['sign', `piece/${id}/sign`],
      ['own', 'reference/own'],
      ['settings', 'settings'],
    ] as const) {
      await open(second.address + path);
      await band
        .getByText(/^Read-only\. As it stood at \d\d:\d\d\. Another Underside has this record open/)
        .waitFor();
      expect(await offered(), name).toEqual([]);
      if (looks !== undefined)
        for (const width of [390, 820, 1280]) {
          await page.setViewportSize({ width, height: 900 });
          await page.screenshot({ path: join(looks, `read-only-${name}-${width}.png`) });
        }
    }
    expect(await faultsInEveryLook(page)).toEqual([]);
    await band.getByText('What this means').click();
    await band.getByText('To enter something, use the Underside at').waitFor();
    expect(writes).toEqual([]);
    const count = async (address: string) =>
      ((await (await fetch(`${address}api/record`)).json()) as { count: number }).count;
    expect(await count(server.address)).toBe(await count(second.address));
    await page.close();
  } finally {
    await second.stop();
  }
}, 180_000);
