import { execFile } from 'node:child_process';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { expect, it, onTestFinished } from 'vitest';
import { openPromise } from 'yauzl';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { copyExample } from './support/copyExample.ts';
import { openProgram } from './support/program.ts';
import { startServer } from './support/startServer.ts';

const program = openProgram();
const looks = process.env.LOOKS;

it('backs up at a button, is brought back, and hands on one piece that any browser shows', async () => {
  const { server, browser } = program;
  const copies = `${server.dataDir}-backups`;
  onTestFinished(() => rm(copies, { recursive: true, force: true }));
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const look = async (name: string, of = page) => {
    if (looks !== undefined) await of.screenshot({ path: join(looks, `${name}.png`), fullPage: true });
  };
  const id = await copyExample(server, 'example-armchair');
  await page.goto(`${server.address}settings`);
  await page.getByText(/There is no back-up in .*-backups yet/).waitFor();
  await page.getByRole('button', { name: 'Back up now' }).click();
  await page.getByText('Backed up, and read back').waitFor();
  await page
    .getByText(/The newest is of .*: 1 act, \d+ photos and other files\. It is the only one\./)
    .waitFor();
  await look('settings-1280');
  await page.setViewportSize({ width: 390, height: 800 });
  await look('settings-390');

  await page.goto(`${server.address}piece/${id}/history`);
  await page.getByRole('button', { name: 'Take out as one file' }).click();
  const link = page.getByRole('link', { name: 'Save the file' });
  await link.waitFor({ timeout: 40_000 });
  await look('history-390');
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  const folder = await temporaryFolder();
  const file = join(folder, 'piece.zip');
  await download.saveAs(file);
  await unzip(file, join(folder, 'piece'));
  const asked: string[] = [];
  const reader = await browser.newPage({ viewport: { width: 390, height: 800 } });
  reader.on('request', (request) => asked.push(request.url()));
  await reader.goto(`file://${join(folder, 'piece', 'index.html')}`);
  await look('index-390', reader);
  expect(await reader.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  const pictures = await reader.evaluate(() => [...document.images].map((image) => image.naturalWidth));
  expect(pictures.length).toBeGreaterThan(3);
  expect(pictures.filter((width) => width === 0)).toEqual([]);
  expect(asked.filter((url) => !/^(file|data):/.test(url))).toEqual([]);
  await reader.setViewportSize({ width: 1280, height: 900 });
  await look('index-1280', reader);
  await reader.close();

  // Brought back into another folder, the program shows the piece there; its file is known to it already.
  const again = join(folder, 'again');
  await promisify(execFile)(process.execPath, ['bin/underside.mjs', 'restore', copies, again]);
  const second = await startServer(again);
  try {
    await page.goto(`${second.address}piece/${id}/examination`);
    await page.locator('.piece-name').waitFor();
    await page.goto(second.address);
    await page.getByText('Bring in a piece from a file').click();
    await page.getByLabel('A piece taken out of another record').setInputFiles(file);
    await page.getByText('Nothing new: its one act is here already.').waitFor();
    await look('restored-390');
  } finally {
    await second.stop();
  }
  await page.close();
}, 180_000);

async function unzip(file: string, to: string): Promise<void> {
  const zip = await openPromise(file);
  for await (const entry of zip.eachEntry()) {
    const chunks: Buffer[] = [];
    for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(chunk as Buffer);
    const at = join(to, entry.fileName);
    await mkdir(dirname(at), { recursive: true });
    await writeFile(at, Buffer.concat(chunks));
  }
}
