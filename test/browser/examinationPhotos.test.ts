import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { copyExample } from './support/copyExample.ts';
import { pieceOf } from './support/pieceOf.ts';
import { openProgram } from './support/program.ts';

const program = openProgram();

/** A plain picture made here, of one colour, so that no two tests send the same bytes. */
async function picture(name: string, background: string) {
  const buffer = await sharp({ create: { width: 1200, height: 900, channels: 3, background } })
    .png()
    .toBuffer();
  return { name, mimeType: 'image/png', buffer };
}

async function openPhotos(page: Page): Promise<string> {
  const id = await copyExample(program.server, 'example-side-chair');
  await page.goto(`${program.server.address}piece/${id}/examination`);
  await page.getByRole('tab', { name: /Photos/ }).click();
  return id;
}

describe('photos in the examination', () => {
  it('keeps several at once, says which is no photo, and goes on with the others', async () => {
    const page = await program.browser.newPage();
    const id = await openPhotos(page);
    const before = Object.keys((await pieceOf(program.server, id)).photos).length;
    const no = {
      name: 'letter.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('This is a letter, not a picture.'),
    };
    await page
      .locator('.exam-drop input[type=file][multiple]')
      .setInputFiles([await picture('front.png', '#a07040'), no, await picture('back.png', '#705030')]);
    await page.getByText('2 of 3 photos saved, 1 not.').waitFor();
    const kept = await pieceOf(
      program.server,
      id,
      (piece) => Object.keys(piece.photos).length === before + 2,
    );
    expect(Object.keys(kept.photos)).toHaveLength(before + 2);
    expect(Object.values(kept.photos).map((photo) => photo.name)).toEqual(
      expect.arrayContaining(['front.png', 'back.png']),
    );
    expect(kept.plateOrder).toHaveLength(before + 2);
    await page.getByRole('button', { name: /Try again/ }).waitFor();
    await page.close();
  }, 120_000);

  it('ties a photo to a finding in a third touch', async () => {
    const page = await program.browser.newPage();
    const id = await copyExample(program.server, 'example-side-chair');
    await page.goto(`${program.server.address}piece/${id}/examination#splat`);
    await page.locator('.exam-panel').getByRole('button', { name: 'Not yet looked at' }).click();
    const key = ((await page.locator('.exam-sign').first().getAttribute('id')) ?? '').replace(/^sign-/, '');
    const row = page.locator(`[id="sign-${key}"]`);
    await row.getByRole('button', { name: 'Present', exact: true }).click();
    await row.locator('input[type=file][capture]').setInputFiles(await picture('splat.png', '#906030'));
    const kept = await pieceOf(program.server, id, (piece) => piece.findings[key]?.photos.length === 1);
    const [photo] = kept.findings[key]?.photos ?? [];
    expect(kept.photos[photo ?? '']).toMatchObject({ name: 'splat.png', part: 'splat' });
    await page.close();
  }, 120_000);

  it('draws marks by keyboard and by pointer, ties one to a finding, and undo takes the last act back', async () => {
    const page = await program.browser.newPage();
    const id = await openPhotos(page);
    await page
      .locator('.exam-drop input[type=file][multiple]')
      .setInputFiles(await picture('marked.png', '#806040'));
    const listed = await pieceOf(program.server, id, (piece) =>
      Object.values(piece.photos).some((each) => each.name === 'marked.png'),
    );
    const photoId = Object.values(listed.photos).find((each) => each.name === 'marked.png')?.id ?? '';
    await page.getByRole('button', { name: /^Open .*marked\.png/ }).click();
    await page.getByRole('button', { name: 'Line', exact: true }).click();
    for (const key of ['Enter', 'Shift+ArrowRight', 'Shift+ArrowRight', 'ArrowDown', 'Enter'])
      await page.keyboard.press(key);
    const one = await pieceOf(program.server, id, (piece) => piece.photos[photoId]?.marks.length === 1);
    expect(one.photos[photoId]?.marks[0]).toMatchObject({
      number: 1,
      kind: 'line',
      points: [
        [0.5, 0.5],
        [0.6, 0.51],
      ],
    });

    await page.getByRole('button', { name: 'Point', exact: true }).click();
    const board = page.getByRole('application');
    await board.scrollIntoViewIfNeeded();
    const box = await board.boundingBox();
    if (box === null) throw new Error('The photo is not on the screen.');
    // The picture of 1200 by 900 lies whole in the middle of the board.
    const scale = Math.min(box.width / 1200, box.height / 900);
    await page.mouse.click(
      box.x + box.width / 2 - 0.25 * 1200 * scale,
      box.y + box.height / 2 - 0.25 * 900 * scale,
    );
    const two = await pieceOf(program.server, id, (piece) => piece.photos[photoId]?.marks.length === 2);
    const [x = 0, y = 0] = two.photos[photoId]?.marks[1]?.points[0] ?? [];
    expect(Math.abs(x - 0.25) + Math.abs(y - 0.25)).toBeLessThan(0.01);

    const finding = await page
      .getByLabel('Finding it bears out')
      .first()
      .locator('option')
      .nth(1)
      .getAttribute('value');
    await page.getByLabel('Finding it bears out').first().selectOption(finding);
    await page.getByLabel('Mark 1 shows').fill('Square edge, as cut.');
    await page.getByLabel('Caption').focus();
    const tied = await pieceOf(program.server, id, (piece) => piece.photos[photoId]?.marks[0]?.words !== '');
    expect(tied.photos[photoId]?.marks[0]).toMatchObject({ finding, words: 'Square edge, as cut.' });

    await page.getByRole('button', { name: 'Delete mark 2' }).click();
    await pieceOf(program.server, id, (piece) => piece.photos[photoId]?.marks.length === 1);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    const back = await pieceOf(program.server, id, (piece) => piece.photos[photoId]?.marks.length === 2);
    expect(back.photos[photoId]?.marks.map((mark) => mark.number)).toEqual([1, 2]);
    await page.close();
  }, 90_000);
});

describe('measures in the examination', () => {
  it('reads inches as the trade writes them, shows both units, and asks about a doubtful one', async () => {
    const page = await program.browser.newPage();
    const id = await copyExample(program.server, 'example-side-chair');
    await page.goto(`${program.server.address}piece/${id}/examination`);
    await page.getByRole('tab', { name: /Measures/ }).click();
    const field = page.locator('.exam-measure').first();
    await field.locator('input').fill('37⅛"');
    await field.getByText('37 1/8 in (943 mm)').waitFor();
    await page.keyboard.press('Enter');
    const kept = await pieceOf(program.server, id, (piece) =>
      Object.values(piece.measures).some((each) => each.asEntered === '37⅛"'),
    );
    const measure = Object.values(kept.measures).find((each) => each.asEntered === '37⅛"');
    // 37 1/8 in × 25.4 mm; the inch of 1959, NIST SP 811 appendix B
    expect(measure?.mm).toBeCloseTo(942.975, 9);
    await field.locator('input').fill('2 in');
    await field.getByText('less than is usual').waitFor();
    await page.keyboard.press('Enter');
    const doubtful = await pieceOf(
      program.server,
      id,
      (piece) => piece.measures[measure?.id ?? '']?.asEntered === '2 in',
    );
    expect(doubtful.measures[measure?.id ?? '']?.mm).toBeCloseTo(50.8, 9);
    await page.close();
  }, 120_000);
});
