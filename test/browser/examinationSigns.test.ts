import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { copyExample } from './support/copyExample.ts';
import { pieceOf } from './support/pieceOf.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

/** A part of a fresh copy of the armchair, opened, and a sign on it that was not answered yet. */
async function atFreshSign(page: Page, part: string) {
  const id = await copyExample(program.server, 'example-armchair');
  await page.goto(`${program.server.address}piece/${id}/examination#${part}`);
  await page.locator('.exam-panel').getByRole('button', { name: 'Not yet looked at' }).click();
  const row = page.locator('.exam-sign').first();
  const key = ((await row.getAttribute('id')) ?? '').replace(/^sign-/, '');
  return { id, key, row: page.locator(`[id="sign-${key}"]`) };
}

describe('answering signs', () => {
  it('answers in one touch, says how sure in a second, and finds it after a reload', async () => {
    const page = await program.browser.newPage();
    const { id, key, row } = await atFreshSign(page, 'splat');
    await row.getByRole('button', { name: 'Present', exact: true }).click();
    await row.getByRole('button', { name: 'Fairly sure' }).click();
    const kept = await pieceOf(program.server, id, (piece) => piece.findings[key]?.sure === 'fairly');
    expect(kept.findings[key]).toMatchObject({ state: 'present', sure: 'fairly', part: 'splat' });
    await page.reload();
    await row.waitFor();
    expect(await row.getByRole('button', { name: 'Present', exact: true }).getAttribute('aria-pressed')).toBe(
      'true',
    );
    await page.close();
  }, 120_000);

  it('withdraws on the same touch again, and undo brings it back', async () => {
    const page = await program.browser.newPage();
    const { id, key, row } = await atFreshSign(page, 'front-rail');
    const absent = row.getByRole('button', { name: 'Absent', exact: true });
    await absent.click();
    await absent.click();
    expect(
      (await pieceOf(program.server, id, (piece) => piece.findings[key] === undefined)).findings[key],
    ).toBeUndefined();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    const back = await pieceOf(program.server, id, (piece) => piece.findings[key] !== undefined);
    expect(back.findings[key]?.state).toBe('absent');
    await page.close();
  }, 120_000);

  it('works from the keyboard alone', async () => {
    const page = await program.browser.newPage();
    const id = await copyExample(program.server, 'example-armchair');
    await page.goto(`${program.server.address}piece/${id}/examination`);
    await page.locator('[data-part-button="crest-rail"]').focus();
    await page.keyboard.press('Enter');
    await page.locator('.exam-panel h2').waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Crest rail');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    const key = await page.evaluate(() =>
      document.activeElement?.closest('.exam-sign')?.id.replace(/^sign-/, ''),
    );
    if (key === undefined) throw new Error('No sign has the focus.');
    const before = (await pieceOf(program.server, id)).findings[key]?.state;
    await page.keyboard.press(before === 'absent' ? 'p' : 'a');
    await page.keyboard.press('3');
    const wanted = before === 'absent' ? 'present' : 'absent';
    const after = await pieceOf(program.server, id, (piece) => piece.findings[key]?.sure === 'hint');
    expect(after.findings[key]).toMatchObject({ state: wanted, sure: 'hint' });
    await page.keyboard.press('Escape');
    await page.locator('.exam-panel').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-part-button'))).toBe(
      'crest-rail',
    );
    await page.close();
  }, 120_000);

  it('opens a part by touching it on the drawing, and finds signs by words', async () => {
    const page = await program.browser.newPage();
    const id = await copyExample(program.server, 'example-armchair');
    await page.goto(`${program.server.address}piece/${id}/examination`);
    await page.locator('.exam-drawing [data-part="splat"] .exam-shape-body').first().click();
    expect(await page.locator('.exam-panel h2').textContent()).toBe('Splat');
    const every = await page.locator('.exam-sign').count();
    await page.getByLabel('Find a sign by words').fill('saw');
    const names = await page.locator('.exam-sign').allInnerTexts();
    expect(names.length).toBeGreaterThan(0);
    expect(names.length).toBeLessThan(every);
    await page.getByLabel('Find a sign by words').fill('zzqq');
    expect(await page.locator('.exam-panel').innerText()).toContain('No sign here speaks of “zzqq”');
    await page.close();
  }, 120_000);

  it('says what to look at next, and leaves out what there is no leave for', async () => {
    const page = await program.browser.newPage();
    const id = await copyExample(program.server, 'example-armchair');
    await page.goto(`${program.server.address}piece/${id}/examination`);
    await page.locator('.exam-look').first().waitFor({ timeout: 90_000 });
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await page.getByLabel('I have').fill('6');
    for (const words of [
      'It may not be turned over',
      'The seat may not be lifted',
      'Nothing may be taken out or off',
      'The owner allows nothing more',
    ])
      await page.getByLabel(words).check();
    const costs = await page.locator('.exam-plan .exam-look-cost').allInnerTexts();
    expect(costs.length).toBeGreaterThan(0);
    for (const cost of costs) expect(cost).toContain('Nothing need be moved');
    const last = Number(/(\d*)½? min in all/.exec(costs.at(-1) ?? '')?.[1]);
    expect(last).toBeLessThanOrEqual(6);
    await page.getByLabel('I have').fill('');
    await page.getByRole('combobox', { name: 'Test a suspicion' }).selectOption('refinished');
    const suspicion = page.getByRole('region', { name: 'The suspicion tested' });
    const answers = suspicion.locator('.exam-look-makes').first();
    const [, found, not] = /^Found: (\d+ in \d+)\. Looked for and not found: (\d+ in \d+)\.$/.exec(
      await answers.innerText({ timeout: 60_000 }),
    ) as RegExpExecArray;
    expect(found).not.toBe(not);
    await suspicion.locator('.exam-look').first().click();
    await page.locator('.exam-panel').waitFor();
    expect(await page.evaluate(() => document.activeElement?.hasAttribute('data-sign-name'))).toBe(true);
    await page
      .locator('.exam-sign', { has: page.locator(':focus') })
      .getByRole('button', { name: 'Present', exact: true })
      .click();
    // What was said to come of it is what comes of it.
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await suspicion.getByText(`(${found})`).waitFor({ timeout: 60_000 });
    await page.close();
  }, 120_000);
});
