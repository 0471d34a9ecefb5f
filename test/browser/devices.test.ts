import { afterAll, beforeAll, expect, it } from 'vitest';
import { faultsInEveryLook } from './support/everyLook.ts';
import { openBrowser } from './support/openBrowser.ts';
import { startServer, type TestServer } from './support/startServer.ts';

let server: TestServer;
let browser: Awaited<ReturnType<typeof openBrowser>>;

beforeAll(async () => {
  [server, browser] = await Promise.all([
    startServer(undefined, 0, ['--network-address', '127.0.0.1']),
    openBrowser(),
  ]);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

it('opens the network by keys alone, pairs a tablet that then enters under its name, and shuts it out', async () => {
  const office = await browser.newPage();
  await office.goto(`${server.address}devices`);
  // Asked for by --network-address, and yet shut, for nobody chose a passphrase.
  await office.getByText('The network is shut').waitFor();
  expect(server.printed()).toContain('First choose a passphrase');
  await office.getByLabel('Passphrase for other devices').focus();
  await office.keyboard.type('four dovetails in a drawer');
  await office.keyboard.press('Enter');
  await office.getByText('A passphrase is chosen').waitFor();
  await office.getByRole('button', { name: 'Open to the local network' }).press('Enter');
  await office.getByRole('button', { name: 'Show a code' }).press('Enter');
  const code = ((await office.locator('.spelled').textContent()) ?? '').replaceAll(' ', '');
  const address = ((await office.locator('.pairing strong').textContent()) ?? '').replace(/pair$/, '');
  expect(await faultsInEveryLook(office)).toEqual([]);

  // The tablet trusts the certificate: test/http/network.test.ts holds what happens where one does not.
  const bag = await browser.newContext({ ignoreHTTPSErrors: true });
  const tablet = await bag.newPage();
  await tablet.goto(await office.locator('section[aria-labelledby=network] li a').first().innerText());
  expect(await faultsInEveryLook(tablet)).toEqual([]);
  await tablet.goto(address);
  await tablet.getByLabel('Passphrase', { exact: true }).fill('not the one that was chosen');
  await tablet.keyboard.press('Enter');
  await tablet.getByText('This is not the passphrase').waitFor();
  expect(await faultsInEveryLook(tablet)).toEqual([]);

  await tablet.goto(`${address}pair#${code}`);
  await tablet.reload();
  await tablet.getByLabel('Name of this device').fill('Kitchen tablet');
  expect(await faultsInEveryLook(tablet, { only: 'phone' })).toEqual([]);
  await tablet.getByRole('button', { name: 'Pair' }).click();
  await tablet.getByRole('link', { name: 'Reference' }).waitFor();
  const isSecret = await tablet.evaluate(async () => {
    const opening = indexedDB.open('underside-device');
    const store = await new Promise<IDBDatabase>((resolve) => {
      opening.onsuccess = () => resolve(opening.result);
    });
    const asked = store.transaction('device').objectStore('device').get('own');
    await new Promise((resolve) => {
      asked.onsuccess = resolve;
    });
    return crypto.subtle.exportKey('pkcs8', asked.result.keys.privateKey).then(
      () => false,
      () => true,
    );
  });
  expect(isSecret).toBe(true);

  // The session is gone, as after a day: the key brings it back without a word.
  await bag.clearCookies();
  await tablet.goto(`${address}devices`);
  await tablet.getByText('This device is paired as').waitFor();

  await office.getByText('The device is paired').waitFor();
  await office.getByRole('button', { name: 'Shut out Kitchen tablet…' }).click();
  await office.getByRole('button', { name: 'Shut out Kitchen tablet', exact: true }).click();
  await office.getByText('shut out', { exact: true }).waitFor();
  await tablet.goto(address);
  await tablet.getByText('This device was shut out on the office computer').waitFor();
});
