import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { axeViolations } from './support/axeViolations.ts';
import { allKept, takeOnPiece } from './support/ownPages.ts';
import { pieceOf } from './support/pieceOf.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

/** Fills the sheet for a sign, all but its figures. */
async function writeSign(page: Page, name: string): Promise<void> {
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('What to look for, and how').fill('A cross in old chalk inside the rail.');
  await page.getByText('Single kinds of part').click();
  await page.getByRole('checkbox', { name: 'Front rail', exact: true }).check();
  await page.getByLabel('What makes it appear').selectOption({ label: 'How the piece was made' });
  await page.getByLabel('Minutes it takes').fill('1');
  await page.getByLabel('Or your own word').selectOption('judgement');
  await page.getByLabel('Why these figures').fill('Seen on four chairs of one house.');
}

async function writeFigure(page: Page, state: string, numbers: readonly string[]): Promise<void> {
  const figure = page.getByRole('group', { name: state, exact: true });
  for (const [at, name] of ['Best', 'Lowest', 'Highest'].entries())
    await figure.getByLabel(name).fill(numbers[at] ?? '');
}

describe('a sign of one’s own', () => {
  it('is written, refused in words at its field, kept, offered on its part at once, answered and marked', async () => {
    const page = await program.browser.newPage();
    const piece = await takeOnPiece(page, program.server.address, 'Chair of the house');
    await page.goto(`${program.server.address}reference?shelf=signs`);
    await page.getByRole('link', { name: 'Add a sign of your own' }).click();
    await writeSign(page, 'Cross in chalk');
    await writeFigure(page, 'Work of the period', ['10', '4', '20']);
    await writeFigure(page, 'Later copy by hand', ['30', '0.5', '5']);
    await writeFigure(page, 'Later copy by machine', ['1', '0.2', '3']);
    await writeFigure(page, 'Made or altered to pass as older', ['5', '2', '10']);
    await page.getByRole('button', { name: 'Save the sign' }).click();

    // The best figure lies above the highest: said above, and at the field.
    await page.getByText('It is not saved yet').waitFor();
    const faulty = page.getByRole('group', { name: 'Later copy by hand', exact: true });
    expect(await faulty.locator('.doubt').textContent()).toMatch(/highest|between|order/i);

    // Left and opened again, nothing typed is lost.
    await page.goto(`${program.server.address}reference/own?kind=sign`);
    expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('Cross in chalk');
    await writeFigure(page, 'Later copy by hand', ['2', '0.5', '5']);
    await page.getByRole('button', { name: 'Save the sign' }).click();
    await page.getByRole('heading', { level: 2, name: 'Cross in chalk (your own addition)' }).waitFor();
    expect(page.url()).toContain('sign=own-cross-in-chalk');
    const known = (await (await fetch(`${program.server.address}knowledge.json`)).json()) as Knowledge;
    expect(known.signs['own-cross-in-chalk']).toMatchObject({
      mine: true,
      on: ['front-rail'],
      shows: { 'bench-copy': { in100: '2, 0.5–5' } },
    });

    // Without a reload: to the piece, its front rail, the sign, an answer.
    await page.evaluate(() => Object.assign(window, { stayed: true }));
    await page.getByRole('link', { name: 'Pieces' }).click();
    await page
      .getByRole('link', { name: /Chair of the house/ })
      .first()
      .click();
    await page.getByRole('link', { name: 'Examination' }).click();
    await page.locator('[data-part-button="front-rail"]').click();
    const row = page.locator('[id="sign-own-cross-in-chalk@front-rail"]');
    expect(await row.textContent()).toContain('Cross in chalk (your own addition)');
    await row.getByRole('button', { name: 'Present', exact: true }).click();
    await allKept(page);
    expect(await page.evaluate(() => 'stayed' in window)).toBe(true);
    const { findings } = await pieceOf(program.server, piece);
    expect(Object.values(findings)).toMatchObject([
      { sign: 'own-cross-in-chalk', part: 'front-rail', state: 'present' },
    ]);

    await page.goto(`${program.server.address}piece/${piece}/readings`);
    await page.locator('.read-lead').waitFor({ timeout: 90_000 });
    expect(await page.locator('.read').textContent()).toContain('Cross in chalk (your own addition)');
    await page.close();
  }, 240_000);

  it('is changed, removed, and the removal taken back', async () => {
    const page = await program.browser.newPage();
    await page.goto(`${program.server.address}reference?sign=own-cross-in-chalk`);
    await page.getByRole('link', { name: 'Change or remove it' }).click();
    await page.getByLabel('Minutes it takes').fill('3');
    await page.getByRole('button', { name: 'Save the sign' }).click();
    await page.getByText('3 minutes').waitFor();
    await page.getByRole('link', { name: 'Change or remove it' }).click();
    await page.getByRole('button', { name: 'Remove it' }).click();
    await page.getByRole('button', { name: 'Take the last change back' }).click();
    await page.getByRole('link', { name: 'Cross in chalk', exact: true }).waitFor();
    await page.close();
  }, 120_000);

  it('has a shop beside it that makes a habit of it, named as one’s own where the sign is read', async () => {
    const page = await program.browser.newPage();
    await page.goto(`${program.server.address}reference/own?kind=shop`);
    await page.getByLabel('Name', { exact: true }).fill('Thistle Lane');
    await page.getByLabel('Kind', { exact: true }).selectOption('workshop');
    await page.getByLabel('Place', { exact: true }).fill('Nowhere');
    await page.getByLabel('From', { exact: true }).fill('1760');
    await page.getByLabel('To', { exact: true }).fill('1790');
    await page.getByLabel('Forms it made').fill('Side chair');
    await page.getByRole('button', { name: 'Remove: Side chair' }).waitFor();
    await page.getByLabel('What it was').fill('A shop made up for a test.');
    for (const [label, numbers] of [
      ['Of 100 pieces of the period of these forms', ['2', '1', '4']],
      ['Of 100 such parts from here', ['90', '80', '97']],
    ] as const) {
      if (label.startsWith('Of 100 such')) {
        await page.getByRole('button', { name: 'Add a habit' }).click();
        await page.getByLabel('Sign', { exact: true }).selectOption('own-cross-in-chalk');
      }
      const figure = page.getByRole('group', { name: label });
      for (const [at, name] of ['Best', 'Lowest', 'Highest'].entries())
        await figure.getByLabel(name).fill(numbers[at] ?? '');
    }
    await page.getByLabel('Or your own word').selectOption('judgement');
    await page.getByLabel('Why these figures').fill('Made up for a test.');
    await page.getByRole('button', { name: 'Save the shop' }).click();
    await page.getByRole('heading', { level: 2, name: 'Thistle Lane (your own addition)' }).waitFor();
    await page.getByRole('link', { name: 'Cross in chalk (your own addition)' }).click();
    await page.getByRole('link', { name: 'Thistle Lane (your own addition)' }).waitFor();
    const guide = await fetch(`${program.server.address}api/field-guide.pdf?family=own-signs`);
    expect(guide.status).toBe(200);
    await page.close();
  }, 120_000);

  it('has a sheet without a fault that axe can find, with faults on it and at 360 pixels', async () => {
    const context = await program.browser.newContext({ viewport: { width: 360, height: 740 } });
    const page = await context.newPage();
    for (const kind of ['sign', 'shop']) {
      await page.goto(`${program.server.address}reference/own?kind=${kind}`);
      await page.getByRole('button', { name: `Save the ${kind}` }).click();
      await page.getByText('It is not saved yet').waitFor();
      expect(await axeViolations(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    }
    await context.close();
  }, 120_000);
});
