import { expect, test } from 'vitest';
import { axeViolations } from './support/axeViolations.ts';
import { copyExample } from './support/copyExample.ts';
import { pieceOf } from './support/pieceOf.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

test('owners are entered and held against the years of making; sales are pasted, and a worth set for each reading', async () => {
  const { server, browser } = program;
  const id = await copyExample(server, 'example-side-chair');
  const page = await browser.newPage();
  await page.goto(`${server.address}piece/${id}/owners`);
  await page.getByRole('button', { name: 'Add an owner' }).click();
  await page.getByLabel('Name').fill('Josiah Example');
  await page.getByLabel('Born').fill('1541');
  await page.getByLabel('Had it from').fill('1560');
  await page.getByLabel('Had it until').fill('1590');
  await page.getByLabel('Where that stands').fill('A family Bible.');
  await page.getByText('by the findings it was made').waitFor();
  await page.getByText('Josiah Example [born 1541], 1560 until 1590 (note 1).').waitFor();
  expect(await axeViolations(page)).toEqual([]);
  const owned = await pieceOf(server, id, ({ owners }) => Object.values(owners)[0]?.source !== '');
  expect(Object.values(owned.owners)).toMatchObject([
    { name: 'Josiah Example', bornIn: 1541, began: [1560, 1560] },
  ]);

  await page.goto(`${server.address}piece/${id}/worth`);
  await page.getByText('Paste a table, or open a CSV or XLSX file').click();
  await page
    .getByLabel('The table, its heads in the first row')
    .fill('Name;Date;Price;Premium\nA;2024-05-01;$4,000;25\nB;2025;5,000;20\nC;2025;unsold;');
  await page.getByRole('radio', { name: 'not in these prices' }).click();
  await page.getByText('2 sales read, 1 row left out').waitFor();
  await page.getByRole('button', { name: 'Enter 2 sales' }).click();
  // 4,000 and 5,000 at the hammer come to 5,000 and 6,000 with the premium.
  await page.getByText('Together the sales say $5,500').waitFor();
  const ranges = page.locator('.worth-reading');
  await ranges.first().waitFor({ timeout: 60_000 });
  for (let each = 0; each < (await ranges.count()); each += 1) {
    await ranges
      .nth(each)
      .getByLabel('From')
      .fill(String(1000 * (each + 1)));
    await ranges
      .nth(each)
      .getByLabel('To')
      .fill(String(2000 * (each + 1)));
  }
  await page.getByText('Over all readings').waitFor();
  expect(await axeViolations(page)).toEqual([]);
  const valued = await pieceOf(server, id, ({ worth }) => Object.keys(worth.byReading).length > 1);
  expect(Object.values(valued.comparables).map(({ priceCents }) => priceCents)).toEqual([400_000, 500_000]);
  expect(Object.values(valued.worth.byReading)[0]).toMatchObject({ lowCents: 100_000, highCents: 200_000 });
  await page.close();
}, 120_000);
