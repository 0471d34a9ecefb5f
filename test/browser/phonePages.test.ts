import { expect, test } from 'vitest';
import { axeViolations } from './support/axeViolations.ts';
import { copyExample } from './support/copyExample.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

test('on a phone every page of a piece is two touches away, under a bar no higher than a thumb at any size of text', async () => {
  const { server, browser } = program;
  const id = await copyExample(server, 'example-side-chair');
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  const page = await context.newPage();
  await page.goto(`${server.address}piece/${id}/engagement`);
  const bar = page.getByRole('navigation', { name: 'Pages of this piece' });
  for (const name of ['Examination', 'Readings', 'Opinion', 'Engagement']) {
    await bar.getByRole('link', { name, exact: true }).tap();
    await page.waitForURL(new RegExp(`/${name.toLowerCase()}$`));
  }
  for (const name of ['Bench', 'Owners', 'Worth', 'History']) {
    await bar.getByText('More', { exact: true }).tap();
    await bar.getByRole('link', { name, exact: true }).tap();
    await page.waitForURL(new RegExp(`/${name.toLowerCase()}$`));
    // What was behind it is folded away again.
    await bar.getByRole('link', { name, exact: true }).waitFor({ state: 'hidden' });
  }
  await bar.getByText('More', { exact: true }).tap();
  expect(await axeViolations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await bar.getByRole('link', { name: 'Settings' }).waitFor({ state: 'hidden' });

  const high = (selector: string) =>
    page.evaluate((it) => document.querySelector(it)?.getBoundingClientRect().height ?? 0, selector);
  expect(await high('.piece-line')).toBeLessThanOrEqual(50);
  await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
  expect(await high('.piece-nav')).toBeGreaterThan(44);
  expect(await high('.piece-nav')).toBeLessThan(64);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await page.getByRole('link', { name: 'Back to the pieces' }).tap();
  await page.getByRole('heading', { name: 'Worked examples, invented' }).waitFor();
  await context.close();
}, 120_000);
