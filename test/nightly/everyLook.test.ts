import { expect, it } from 'vitest';
import { faultsInEveryLook } from '../browser/support/everyLook.ts';
import { ownPages, takeOnPiece } from '../browser/support/ownPages.ts';
import { openProgram } from '../browser/support/program.ts';

const program = openProgram();

const ofExamples = {
  'examination of an example': 'piece/example-armchair/examination',
  'readings of an example': 'piece/example-armchair/readings',
  'bench of an example': 'piece/example-armchair/bench',
};

// The ordinary run looks at a phone in the light and a desk in the dark (test/browser/ownPages.test.ts); here each in both.
it('every page holds on a phone and a desk, in the light and in the dark, with every fold opened', async () => {
  const { address } = program.server;
  const page = await program.browser.newPage();
  const id = await takeOnPiece(page, address, 'Looked-at chair');
  const faults: string[] = [];
  for (const [name, path] of Object.entries({ ...ownPages(id), ...ofExamples })) {
    await page.goto(address + path);
    await page.locator('h1').first().waitFor();
    await page.waitForLoadState('networkidle');
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    const found = await faultsInEveryLook(page, { rules: 'all', looks: 'all' });
    faults.push(...found.map((each) => `${name}: ${each}`));
  }
  expect(faults).toEqual([]);
});
