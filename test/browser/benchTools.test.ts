import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { faultsInEveryLook } from './support/everyLook.ts';
import { allKept } from './support/ownPages.ts';
import { pieceOf } from './support/pieceOf.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

/** Takes a piece of a form on; answers its id. */
async function takeOn(page: Page, form: RegExp, title: string): Promise<string> {
  await page.goto(`${program.server.address}new`);
  await page.getByRole('radio', { name: form }).first().check();
  await page.getByLabel('Name of the piece').fill(title);
  await page.getByRole('button', { name: 'Open the piece' }).click();
  await page.waitForURL(/\/engagement$/);
  await allKept(page);
  return /piece\/([^/]+)/.exec(page.url())?.[1] as string;
}

async function layOut(page: Page, id: string, tool: string): Promise<void> {
  await page.goto(`${program.server.address}piece/${id}/bench#${tool}`);
  await page.locator('#bench-open').waitFor();
  await page.locator('.bench-top label').first().waitFor();
}

const says = (page: Page) =>
  page
    .locator('.bench-says')
    .textContent({ timeout: 10_000 })
    .then((text) => text ?? '');

describe('an out-of-round top', () => {
  it('is measured at the bench, entered as a finding, and weighed in the readings as measured', async () => {
    const page = await program.browser.newPage();
    const id = await takeOn(page, /^Tilt-top/, 'Round table');
    await layOut(page, id, 'roundness');
    await page.getByLabel('Wood').selectOption('mahogany-true');
    await page.getByLabel('Diameter along the grain').fill('32 1/16');
    await page.getByLabel('Diameter across the grain').fill('31 5/8');
    // 32 1/16 − 31 5/8 = 7/16 in.
    expect(await says(page)).toMatch(/differ by 7\/16.*times as probable of old work/);
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    await page.getByText('the readings take it in as measured').waitFor();
    const piece = await pieceOf(program.server, id, ({ findings }) => Object.keys(findings).length > 0);
    const finding = Object.values(piece.findings)[0];
    expect(finding?.sign).toBe('round-top-out-of-round');
    expect(finding?.measured?.likelihoods.natural).toBeGreaterThan(2);

    await page.goto(`${program.server.address}piece/${id}/readings`);
    await page.locator('.read-lead').waitFor({ timeout: 90_000 });
    expect((await page.locator('.read-weights').allTextContents()).join('\n')).toContain(
      'Round top shrunk across the grain',
    );
    await page.close();
  }, 240_000);
});

describe('tools for a set', () => {
  it('tells the size of a set from Roman numerals, and keeps what was typed over a reload', async () => {
    const page = await program.browser.newPage();
    const id = await takeOn(page, /^Armchair/, 'Armchair of a set');
    await layOut(page, id, 'set-size');
    await page.getByLabel('Numbers found').fill('III, VII, XI');
    // Counted by hand: 1/C(N, 3) for N from 11, endless; its sum to n is 1 − (10 · 9)/((n)(n − 1)), so half is passed at 13 … 14.
    const median = [11, 12, 13, 14, 15].find((n) => 1 - (10 * 9) / (n * (n - 1)) >= 0.5);
    expect(await says(page)).toContain(`as probably as not no more than ${median}`);
    await page.reload();
    expect(await page.getByLabel('Numbers found').inputValue()).toBe('III, VII, XI');
    await page.getByLabel('Numbers found').fill('III, seat');
    await page.getByText('Not read: seat').waitFor();
    await page.getByText('One number sets no upper end').waitFor();
    await page.close();
  }, 120_000);

  it('sets members side by side from a pasted table, names the odd one and enters the narrow seat', async () => {
    const page = await program.browser.newPage();
    const id = await takeOn(page, /^Armchair/, 'Armchair with arms put on');
    await layOut(page, id, 'members');
    await page.getByText('Paste from a spreadsheet').click();
    const lines = [
      ['Chair', 'Kind', 'Overall width', 'Seat width, front', 'Seat height'],
      ['I', 'side', '21 3/4', '20 7/8', '17'],
      ['II', 'side', '21 7/8', '21', '16 15/16'],
      ['III', 'side', '21 5/8', '20 7/8', '17 1/16'],
      ['IIII', 'side', '21 3/4', '21', '17'],
      ['V', 'side', '21 11/16', '20 15/16', '16 1/8'],
      ['A', 'arm', '26 1/4', '21 1/16', '17'],
    ];
    await page.getByLabel('Cells copied').fill(lines.map((line) => line.join('\t')).join('\n'));
    await page.getByRole('button', { name: 'Put it in the table' }).click();
    expect(await says(page)).toContain('V stands out in seat height: 16 1/8 in');
    expect(await says(page)).toMatch(
      /seats are 1\/8 in wider .*Over all, arms and all, the armchairs are 4 1\/2 in wider/,
    );
    await page.getByLabel('Seat width, front of A').fill('23');
    await expect.poll(() => says(page)).toContain('seats are 2 1/16 in wider');
    await page.getByLabel('Seat width, front of A').fill('21 1/16');
    await page.getByRole('button', { name: 'Keep at the bench' }).click();
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    const piece = await pieceOf(program.server, id, (each) => Object.keys(each.findings).length > 0);
    expect(Object.values(piece.findings)[0]).toMatchObject({
      sign: 'armchair-as-narrow-as-side-chair',
      state: 'present',
    });
    expect(Object.values(piece.bench)[0]?.marks).toMatchObject({ columns: lines[0]?.slice(2) });
    await page.close();
  }, 120_000);
});

describe('wear', () => {
  it('is painted by the keyboard, and wear underneath with a sharp top is named', async () => {
    const page = await program.browser.newPage();
    const id = await takeOn(page, /^Armchair/, 'Worn armchair');
    await layOut(page, id, 'wear');
    await page.getByLabel('Part to paint').selectOption('arm-left');
    await page.getByRole('radio', { name: /Heavy wear/ }).check();
    const cell = (face: string, at: number) =>
      page.getByRole('gridcell', { name: `${face}, stretch ${at} of 12` });
    await cell('top', 1).focus();
    for (let at = 1; at <= 12; at += 1) {
      for (let turn = 0; turn < 4; turn += 1) await page.keyboard.press(' ');
      await page.keyboard.press('ArrowRight');
    }
    expect(await cell('top', 12).getAttribute('aria-label')).toContain('sharp here');
    await page.getByText('Still to look at before it counts: outside, inside, underside.').waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press(' ');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press(' ');
    await page.keyboard.press('ArrowDown');
    for (let at = 1; at <= 12; at += 1) {
      await page.keyboard.press('Enter');
      await page.keyboard.press('ArrowLeft');
    }
    expect(await says(page)).toContain('Left arm, top: sharp where much touches.');
    expect(await says(page)).toContain('Left arm, underside: worn where nothing touches.');
    expect(await page.getByLabel('Enter it as a finding').locator('option').first().textContent()).toContain(
      'Wear where no use would reach',
    );
    await page.getByRole('button', { name: 'Keep at the bench' }).click();
    await allKept(page);
    await page.evaluate(() => localStorage.clear());
    await page.reload();
    await page.getByRole('button', { name: 'Take up again: Wear of left arm' }).click();
    expect(await says(page)).toContain('Left arm, top: sharp where much touches.');
    await page.close();
  }, 120_000);
});

describe('a finger', () => {
  it('drawn along a strip paints it, and the page stays where it is', async () => {
    const context = await program.browser.newContext({
      viewport: { width: 360, height: 740 },
      hasTouch: true,
    });
    const page = await context.newPage();
    await layOut(page, 'example-armchair', 'wear');
    await page.getByLabel('Part to paint').selectOption('crest-rail');
    const cells = page.locator('[data-face="0"]');
    await cells.first().evaluate((cell) => cell.scrollIntoView({ block: 'center' }));
    const from = await cells.nth(2).boundingBox();
    const to = await cells.nth(6).boundingBox();
    if (from === null || to === null) throw new Error('the strip is not shown');
    const top = await page.evaluate(() => scrollY);
    const touch = await context.newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
    const y = from.y + from.height / 2;
    await send('touchStart', from.x + from.width / 2, y);
    for (let x = from.x + from.width / 2; x <= to.x + to.width / 2; x += 4)
      await send('touchMove', x, y - (x - from.x) / 20);
    await send('touchEnd', 0, 0);
    const strokes = await cells.evaluateAll((all) =>
      all.map((cell) => (cell as HTMLElement).dataset.stroke ?? ''),
    );
    expect(strokes.map((stroke) => stroke === 'heavy')).toEqual(strokes.map((_, at) => at >= 2 && at <= 6));
    expect(await page.evaluate(() => scrollY)).toBe(top);
    await context.close();
  }, 120_000);
});

describe('on a phone and a desk, in the light and in the dark', () => {
  it.each(['set-size', 'members', 'wear', 'panel', 'edges', 'dating'])(
    'nothing of the tool %s is wider than the screen, nor barred to a reader',
    async (tool) => {
      const page = await program.browser.newPage();
      await layOut(page, 'example-armchair', tool);
      if (tool === 'wear') await page.getByLabel('Part to paint').selectOption('arm-left');
      if (tool === 'set-size') await page.getByLabel('Numbers found').fill('3, 7, 11');
      if (tool === 'panel') await page.getByLabel('Width across the grain').fill('17 3/8');
      if (tool === 'edges') {
        for (const [label, length] of Object.entries({
          'Width of the opening': '7/8',
          'Thickness at the edge': '1/2',
          'How deep the slope is': '5/16',
          'How far it cuts in': '1/4',
        }))
          await page.getByLabel(label).fill(length);
        await page.getByRole('slider').press('ArrowRight');
        await page.getByText('At 31°').waitFor();
      }
      if (tool === 'dating') await page.getByLabel('Earliest').fill('1815');
      expect(await faultsInEveryLook(page)).toEqual([]);
      await page.close();
    },
    120_000,
  );
});
