import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { sha256 } from '../kits/pictures.ts';
import { openBrowser } from './support/openBrowser.ts';
import { allKept, takeOnPiece } from './support/ownPages.ts';
import { startServer, type TestServer } from './support/startServer.ts';

describe('a piece from the first word to the signed opinion', () => {
  const used = {} as { server: TestServer; browser: Browser; page: Page };
  beforeAll(async () => {
    used.server = await startServer();
    used.browser = await openBrowser();
  });
  afterAll(async () => {
    await used.browser?.close();
    await used.server?.stop();
  });
  beforeEach(async () => {
    used.page = await (await used.browser.newContext()).newPage();
  });
  afterEach(() => used.page.context().close());

  test('the first page shows the examples, marked as invented, and says that there is nothing of one’s own', async () => {
    const { page, server } = used;
    await page.goto(server.address);
    await page.getByRole('heading', { name: 'Worked examples, invented' }).waitFor();
    expect(await page.getByText('invented', { exact: true }).count()).toBe(2);
    expect(await page.getByText('No piece of your own yet').isVisible()).toBe(true);
  });

  test('engagement is kept as typed, told in the history, and taken back', async () => {
    const { page, server } = used;
    await page.goto(`${server.address}settings`);
    await page.getByLabel('Your name').fill('Ines Vantrey');
    await page.getByLabel('Your name').blur();
    const id = await takeOnPiece(page, server.address, 'Hall chair');
    await page.getByLabel('Client', { exact: true }).fill('Mrs Orme');
    await page.getByLabel('Client', { exact: true }).blur();
    await page.getByText('An estate').click();
    await page.getByText('Estates are often taxed').waitFor();
    await page.getByLabel('Client', { exact: true }).fill('Mrs Orme-Lane');
    await page.getByLabel('Client', { exact: true }).blur();
    await allKept(page);

    await page.getByRole('link', { name: 'History' }).click();
    await page.getByText('Changed the client.').waitFor();
    expect(await page.getByText('Before: Mrs Orme').first().isVisible()).toBe(true);
    expect(await page.getByText('Ines Vantrey, on').first().isVisible()).toBe(true);

    await page.keyboard.press('Control+z');
    await page.getByText('Took back: changed the client.').waitFor();
    expect(await page.getByText('taken back later').count()).toBe(1);
    expect(await clientInRecord(server, id)).toBe('Mrs Orme');
    await page.keyboard.press('Control+Shift+z');
    await page.getByText('Brought back: changed the client.').waitFor();
    expect(await page.getByText('taken back later').count()).toBe(0);
    expect(await clientInRecord(server, id)).toBe('Mrs Orme-Lane');

    await page.getByLabel('Find in the history').fill('intended use');
    await page.getByText(/^1 of \d+ acts/).waitFor();
  });

  test('what is typed is kept without leaving the field, and stays after a reload', async () => {
    const { page, server } = used;
    const id = await takeOnPiece(page, server.address, 'Typed chair');
    await page.getByLabel('The question').pressSequentially('Is it old?');
    await page.getByText('Saving…').or(page.getByText('Saved')).first().waitFor();
    await expect
      .poll(() => pieceInRecord(server, id).then((piece) => piece.engagement.question))
      .toBe('Is it old?');
    await page.reload();
    await expect.poll(() => page.getByLabel('The question').inputValue()).toBe('Is it old?');
  });

  test('an example is made one’s own, archived, found by a year, and brought back', async () => {
    const { page, server } = used;
    await page.goto(server.address);
    await page
      .getByRole('button', { name: /^Make a copy to edit/ })
      .first()
      .click();
    await page.waitForURL(/piece\/(?!example)[^/]+\/examination$/);
    const id = /piece\/([^/]+)/.exec(page.url())?.[1] ?? '';
    const mine = await pieceInRecord(server, id);
    expect(mine.example).toBe(false);
    await page.goto(server.address);
    const entry = page
      .getByRole('region', { name: 'Open' })
      .getByRole('listitem')
      .filter({ hasText: mine.title });
    await entry.getByRole('button', { name: /^Archive/ }).click();
    await page.getByText('is in the archive, at the end of the list').waitFor();
    expect((await pieceInRecord(server, id)).putAway).toBe(true);
    await page.getByText(/^Archive: \d piece/).click();
    await page.getByRole('button', { name: `Bring back: ${mine.title}` }).click();
    await page.getByText('is back in the list').waitFor();
    expect((await pieceInRecord(server, id)).putAway).toBe(false);
    await page.getByLabel('Find by words').fill('1492');
    await page.getByText('No piece answers to all of these words').waitFor();
  });

  test('a revision asks for what it lacks, is signed once, kept as it is, followed by a next one, and never undone', async () => {
    const { page, server } = used;
    const id = await takeOnPiece(page, server.address, 'Signed chair');
    await page.getByRole('link', { name: 'Opinion' }).click();
    await page.getByRole('link', { name: 'Review and sign revision 1' }).click();
    await page.getByRole('heading', { name: 'Needed before you can sign' }).waitFor();
    expect(await page.getByRole('button', { name: 'Sign revision 1' }).isDisabled()).toBe(true);
    await page.getByText('Your own interest in the piece, or that you have none').waitFor();
    await page.getByRole('link', { name: 'The reading you conclude on' }).click();
    await page.getByText('A later copy, made by machine').click();
    await page.getByLabel('Conclusion', { exact: true }).fill('A side chair made by machine about 1910.');
    await page.getByLabel('Reasons').fill('Its stretchers are centered and doweled.');
    await page.getByLabel('Made in the years').fill('about 1910');
    await page.getByLabel('Made in the years').blur();
    await page.getByRole('link', { name: 'Review and sign revision 1' }).click();
    await page.getByLabel('Signed by').fill('Ines Vantrey');
    await page.getByRole('button', { name: 'Sign revision 1' }).dblclick();
    await page.getByRole('heading', { name: 'Revision 1 is signed' }).waitFor({ timeout: 60_000 });
    const first = await pieceInRecord(server, id);
    expect(first.opinion).toMatchObject({
      status: 'signed',
      reading: 'later-machine-copy',
      years: [1900, 1920],
    });
    expect(Object.keys(first.issued)).toEqual(['1']);
    await page.getByText('Signed: undo stops here.').waitFor();
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    const stored = await savedPdf(page, 'Save revision 1 (PDF)');
    expect(stored.name).toMatch(/^Signed chair, \d{4}-\d{2}-\d{2}, revision 1\.pdf$/);
    expect(sha256(stored.bytes)).toBe(first.issued['1']?.pdfSha256);

    await page.getByRole('link', { name: 'Engagement' }).click();
    await page.getByLabel('Client', { exact: true }).fill('Someone else');
    await page.getByLabel('Client', { exact: true }).blur();
    for (const room of ['Engagement', 'Examination', 'Readings', 'Bench', 'Opinion', 'History']) {
      await page.getByRole('link', { name: room, exact: true }).click();
      await page.getByText('Changed since revision 1.').waitFor();
    }
    await page.getByRole('link', { name: 'Opinion', exact: true }).click();
    expect(await page.getByLabel('Reasons').getAttribute('readonly')).not.toBeNull();
    expect((await savedPdf(page, 'Save revision 1 (PDF)')).bytes.equals(stored.bytes)).toBe(true);
    await page.getByRole('link', { name: 'Compare', exact: true }).click();
    await page.getByText('The client: now “Someone else”').waitFor();

    await page.getByRole('button', { name: 'Begin revision 2' }).first().click();
    await page.getByRole('link', { name: 'Review and sign revision 2' }).first().click();
    await page.getByRole('link', { name: 'What is new in this revision' }).waitFor();
    await page.getByLabel('What is new').fill('The client.');
    await page.getByLabel('Why this revision is made').fill('It was sold.');
    await page.getByLabel('Why this revision is made').blur();
    await page.getByLabel('Signed by').fill('Ines Vantrey');
    await page.getByRole('button', { name: 'Sign revision 2' }).click();
    await page.getByRole('heading', { name: 'Revision 2 is signed' }).waitFor({ timeout: 60_000 });
    expect((await pieceInRecord(server, id)).issued['2']).toMatchObject({
      isNew: 'The client.',
      why: 'It was sold.',
    });
    expect((await savedPdf(page, 'Save revision 1 (PDF)')).bytes.equals(stored.bytes)).toBe(true);
  });

  test('reference opens at a sign by its address and leads on to what it leans on', async () => {
    const { page, server } = used;
    await page.goto(`${server.address}reference?sign=dents-of-many-ages`);
    await page.getByRole('heading', { name: 'Dents and scratches of many ages' }).waitFor();
    expect(await page.getByRole('table').first().isVisible()).toBe(true);
    await page.getByRole('article').getByRole('link').last().click();
    await page.waitForURL(/source=/);
    await page.getByText('Signs that lean on it').waitFor();
  });
});

type RecordedPiece = {
  title: string;
  example: boolean;
  putAway: boolean;
  engagement: { client: string; question: string };
  issued: Record<string, { pdfSha256: string; isNew: string; why: string }>;
  opinion: { status: string; reading?: string; years?: number[] };
};

async function pieceInRecord(server: TestServer, id: string): Promise<RecordedPiece> {
  const answer = await fetch(`${server.address}api/pieces/${id}`);
  return ((await answer.json()) as { piece: RecordedPiece }).piece;
}

/** The file behind a link, and the name it is saved under. */
async function savedPdf(page: Page, link: string): Promise<{ name: string; bytes: Buffer }> {
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: link }).click();
  const file = await download;
  const chunks: Buffer[] = [];
  for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer);
  return { name: file.suggestedFilename(), bytes: Buffer.concat(chunks) };
}

async function clientInRecord(server: TestServer, id: string): Promise<string> {
  return (await pieceInRecord(server, id)).engagement.client;
}
