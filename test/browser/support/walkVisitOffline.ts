import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { allKept } from './ownPages.ts';
import { pieceOf } from './pieceOf.ts';
import { startServer, type TestServer } from './startServer.ts';
import { beginPiece, enterVisit, installApp, type Visit } from './visit.ts';

/**
 * A whole visit on one device: the app is laid in, the server and the network go, a piece is begun and examined, the page
 * is loaded anew, closed and opened again, its readings are read; then all comes back, and the record has everything once.
 *
 * @param used  the server is put back in its place, on its folder
 */
export async function walkVisitOffline(
  used: { server: TestServer; browser: Browser },
  visit: Visit,
): Promise<void> {
  const { address, dataDir } = used.server;
  const context = await used.browser.newContext({ serviceWorkers: 'allow' });
  const faults: string[] = [];
  context.on('weberror', (error) => faults.push(error.error().message));
  const first = await installApp(context, address);
  const known = await beginPiece(first, 'Chair seen before');
  await allKept(first);

  await context.setOffline(true);
  await used.server.kill();
  await first.goto(address);
  await first.getByRole('link', { name: 'Chair seen before' }).waitFor();
  const id = await beginPiece(first, 'Chair in an attic');
  await enterVisit(first, visit);
  await first.getByText(new RegExp(`${visit.photos} on this device`)).waitFor();
  await first.getByText(new RegExp(`${visit.photos} photos \\(.+\\) wait on this device`)).waitFor();
  await first.getByText(/^Room left on this device/).waitFor();

  await first.reload();
  await first.getByRole('tab', { name: /Photos/ }).click();
  await shownPhotos(first, visit.photos);
  await first.close();
  const again = await context.newPage();
  await again.goto(address);
  await again.getByRole('link', { name: 'Chair in an attic' }).click();
  await again.getByRole('link', { name: 'Readings', exact: true }).click();
  await again.locator('.read-two').first().waitFor();
  await again.getByRole('link', { name: 'Examination', exact: true }).click();
  await again.locator('.exam-look').first().waitFor();
  await again.goto(`${address}piece/${known}/examination`);
  await again.locator('[data-part-button]').first().waitFor();

  used.server = await startServer(dataDir, Number(new URL(address).port));
  await context.setOffline(false);
  await again.goto(`${address}piece/${id}/examination`);
  await allKept(again);
  const kept = await pieceOf(used.server, id, (piece) => Object.keys(piece.photos).length === visit.photos);
  expect(Object.keys(kept.photos)).toHaveLength(visit.photos);
  expect(kept.plateOrder).toHaveLength(visit.photos);
  expect(Object.keys(kept.findings)).toHaveLength(visit.findings);
  const listed = (await (await fetch(`${address}api/pieces`)).json()) as { pieces: { title: string }[] };
  const titles = listed.pieces.map(({ title }) => title);
  expect(titles.filter((title) => /^Chair/.test(title)).sort()).toEqual([
    'Chair in an attic',
    'Chair seen before',
  ]);
  for (const { sha256, bytes } of Object.values(kept.photos)) {
    const original = await fetch(`${address}api/photos/${sha256}/original`);
    expect((await original.arrayBuffer()).byteLength).toBe(bytes);
  }
  expect(faults).toEqual([]);
  await context.close();
}

/** Waits until so many photos are really drawn, not only named. */
async function shownPhotos(page: Page, count: number): Promise<void> {
  await page.waitForFunction(
    (wanted) =>
      [...document.querySelectorAll<HTMLImageElement>('.exam-plate img')].filter(
        (one) => one.naturalWidth > 0,
      ).length === wanted,
    count,
  );
}
