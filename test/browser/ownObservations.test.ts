import { expect, it } from 'vitest';
import { axeViolations } from './support/axeViolations.ts';
import { overTheEdge, screens } from './support/everyLook.ts';
import { allKept, takeOnPiece } from './support/ownPages.ts';
import { pieceOf } from './support/pieceOf.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

it('keeps an observation while it is written, records it by keyboard, tells it as one’s own and takes it back', async () => {
  const page = await program.browser.newPage({ viewport: screens.phone });
  const id = await takeOnPiece(page, program.server.address, 'Chair with a chalk mark');
  await page.goto(`${program.server.address}piece/${id}/examination#splat`);
  await page.getByRole('button', { name: 'Something no sign covers' }).click();
  await page.getByLabel('What you saw').fill('Chalk under the dust.');
  expect(await page.locator('.own-new').innerText()).toContain('it weighs nothing');

  await page.reload();
  expect(await page.getByLabel('What you saw').inputValue()).toBe('Chalk under the dust.');
  const row = page.getByRole('radiogroup', { name: 'A later copy' });
  await row.getByRole('radio', { name: 'sometimes' }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  expect(await row.getByRole('radio', { name: 'nearly always' }).isChecked()).toBe(true);
  expect(await page.locator('.own-new').innerText()).not.toContain('it weighs nothing');
  expect(await overTheEdge(page)).toBe(0);
  expect(await axeViolations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Record the observation' }).press('Enter');

  const card = page.locator('[data-observation]');
  expect(await card.innerText()).toContain('your own');
  await allKept(page);
  const { observations } = await pieceOf(program.server, id);
  expect(Object.values(observations)).toMatchObject([
    {
      words: 'Chalk under the dust.',
      part: 'splat',
      expected: { original: 'sometimes', copied: 'nearly always' },
    },
  ]);

  await page.goto(`${program.server.address}piece/${id}/readings`);
  await page.locator('.read-lead').waitFor({ timeout: 90_000 });
  const reason = page.locator('.read-weights > li').first();
  expect(await reason.innerText()).toMatch(/your own.*Your own observation “Chalk under the dust”/is);

  await page.goBack();
  await card.locator('[data-sign-name]').click();
  await card.getByRole('button', { name: 'Propose it as a sign of your own' }).click();
  expect(await page.getByLabel('What to look for, and how').inputValue()).toBe('Chalk under the dust.');
  await page.goBack();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  const undone = await pieceOf(program.server, id, (piece) => Object.keys(piece.observations).length === 0);
  expect(undone.observations).toEqual({});
  await page.close();
}, 240_000);
