import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { openBrowser } from './support/openBrowser.ts';
import { startServer, type TestServer } from './support/startServer.ts';

let server: TestServer;
let browser: Browser;
let knowledge: Knowledge;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  knowledge = (await (await fetch(`${server.address}knowledge.json`)).json()) as Knowledge;
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

describe('the shelf of signs', () => {
  it('is narrowed by form and part, and the arrow keys lead on within the family', async () => {
    const stool = knowledge.forms.stool;
    if (stool === undefined) throw new Error('the stool is gone');
    const page = await browser.newPage();
    await page.goto(`${server.address}reference`);
    await page.getByText('Narrow the shelf').click();
    await page.getByLabel('Asked of').selectOption('stool');
    const kinds = ['whole', ...stool.parts.map((part) => part.kind)];
    const asked = Object.values(knowledge.signs).filter((sign) =>
      kinds.some((kind) => askedOf(sign, kind, stool)),
    );
    await page.getByText(`${asked.length} entries`, { exact: true }).waitFor();

    const [family] = knowledge.families
      .map(({ signs }) => signs.filter((id) => asked.some((sign) => sign.id === id)))
      .filter((signs) => signs.length >= 2);
    const [first, second] = (family ?? []).map((id) => knowledge.signs[id]?.name ?? id);
    await page.getByRole('link', { name: first ?? '', exact: true }).click();
    await page.getByRole('heading', { level: 2, name: first ?? '', exact: true }).waitFor();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { level: 2, name: second ?? '', exact: true }).waitFor();
    expect(page.url()).toContain('of=stool');
    await page.keyboard.press('ArrowLeft');
    await page.getByRole('heading', { level: 2, name: first ?? '', exact: true }).waitFor();
    await page.close();
  }, 60_000);

  it('shows a sign with its drawing, said in words', async () => {
    const page = await browser.newPage();
    await page.goto(`${server.address}reference?sign=dovetails-cut-by-hand`);
    const drawing = page.getByRole('img', { name: 'Dovetails by hand and by machine' });
    await drawing.waitFor();
    const described = (await drawing.getAttribute('aria-describedby')) ?? '';
    expect(await page.locator(`[id="${described}"]`).textContent()).toContain(
      'by hand: no pin is as wide as its neighbor',
    );
    await page.close();
  }, 60_000);
});

describe('the page of a form', () => {
  it('draws it with the features chosen, and leads to its guide on paper', async () => {
    const page = await browser.newPage();
    await page.goto(`${server.address}reference?form=side-chair`);
    const parts = page.getByRole('table', { name: /^Parts/ }).getByRole('rowheader');
    await parts.first().waitFor();
    expect(await parts.filter({ hasText: 'stretcher' }).count()).toBe(0);
    const stretchers = page.getByLabel('Stretchers');
    const option = await stretchers.locator('option').nth(1).getAttribute('value');
    await stretchers.selectOption(option);
    expect(await parts.filter({ hasText: 'stretcher' }).count()).toBeGreaterThan(0);
    const guide = await page.getByRole('link', { name: /^Field guide/ }).getAttribute('href');
    const answer = await fetch(new URL(guide ?? '', server.address));
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    await page.close();
  }, 60_000);
});

describe('what an entry says of itself', () => {
  it('is its standard term, whose hands did the work, and that a file is provisional', async () => {
    const page = await browser.newPage();
    const told = async (entry: string, name: string) => {
      await page.goto(`${server.address}reference?${entry}`);
      await page.getByRole('heading', { level: 2, name }).waitFor();
      return (await page.locator('main').textContent()) ?? '';
    };
    const { stool } = knowledge.forms;
    const { charleston, 'rural-new-england': rural } = knowledge.shops;
    expect(await told('form=stool', stool?.name ?? '')).toContain(`AAT ${stool?.aat?.id}, stools`);
    const sourced = await told('shop=charleston', charleston?.name ?? '');
    expect(sourced).toContain('Who did the work');
    expect(sourced).toContain(charleston?.whoWorked?.words);
    expect(sourced).not.toContain('Provisional:');
    expect(await told('shop=rural-new-england', rural?.name ?? '')).toContain(
      'Provisional: no work is cited',
    );
    await page.close();
  }, 60_000);
});
