import { createHash, randomBytes, webcrypto } from 'node:crypto';
import type { Hono } from 'hono';
import { onTestFinished } from 'vitest';
import { challengeText, pairingText } from '../../src/ground/signedTexts.ts';
import { type Access, openAccess } from '../../src/server/access/access.ts';
import { openAccessFile } from '../../src/server/access/accessFile.ts';
import { homeAccessRoutes } from '../../src/server/access/homeAccessRoutes.ts';
import { homeDoor } from '../../src/server/door/homeDoor.ts';
import { networkDoor } from '../../src/server/door/networkDoor.ts';
import type { Network } from '../../src/server/network/network.ts';
import { temporaryFolder } from './temporaryFolder.ts';
import { type TestApp, type TestWishes, testApp } from './testApp.ts';

/** The passphrase of the tests. */
export const passphrase = 'four dovetails in a drawer';

/** Both doors of a server in this process, with a clock that the test moves. */
export type TestDoors = TestApp & {
  home: Hono;
  network: Hono;
  access: Access;
  dataDir: string;
  clock: { now: number };
  /** Asks at the door of the network, as a page of it does unless told otherwise. */
  ask: (path: string, wish?: Wish) => Promise<Response>;
  /** The cookie of somebody who signs in by the passphrase. */
  signIn: () => Promise<string>;
};

export type Wish = { body?: unknown; cookie?: string; from?: string; headers?: Record<string, string> };

export const host = '192.168.1.20:4718';

export async function testDoors(wishes: TestWishes = {}): Promise<TestDoors> {
  const dataDir = await temporaryFolder();
  const clock = { now: Date.UTC(2026, 10, 25, 9) };
  const file = openAccessFile(dataDir);
  const access = openAccess(file, { now: () => clock.now, cost: { N: 1024, r: 8, p: 1 } });
  // When somebody was last seen is written by the way: it must be done before the folder goes.
  onTestFinished(() => file.change((state) => state));
  const whole = await testApp(wishes);
  const network = networkDoor(whole.house, access, () => ['192.168.1.20', 'office.local']);
  const ask = async (path: string, { body, cookie, from = '192.168.1.31', headers }: Wish = {}) =>
    network.request(
      `https://${host}${path}`,
      {
        ...(body === undefined
          ? {}
          : { method: 'POST', body: typeof body === 'string' ? body : JSON.stringify(body) }),
        headers: {
          host,
          'sec-fetch-site': 'same-origin',
          ...(body === undefined
            ? {}
            : { 'content-type': 'application/json', 'x-underside': '1', origin: `https://${host}` }),
          ...(cookie === undefined ? {} : { cookie }),
          ...headers,
        },
      },
      { incoming: { socket: { remoteAddress: from } } },
    );
  const home = homeDoor(whole.house, homeAccessRoutes(access, noNetwork));
  const signIn = async () => {
    if (!access.hasPassphrase()) await access.choosePassphrase(passphrase);
    const answer = await ask('/api/access/sign-in', { body: { passphrase } });
    if (!answer.ok) throw new Error(await answer.text());
    return cookieOf(answer);
  };
  return { ...whole, home, network, access, dataDir, clock, ask, signIn };
}

/** The cookie that an answer sets, as it is sent back. */
export function cookieOf(answer: Response): string {
  return /^[^;]+/.exec(answer.headers.get('set-cookie') ?? '')?.[0] ?? '';
}

/** A device with a key of its own, as a browser makes one. */
export async function testDevice() {
  const keys = await webcrypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, [
    'sign',
    'verify',
  ]);
  const publicKey = Buffer.from(await webcrypto.subtle.exportKey('raw', keys.publicKey)).toString(
    'base64url',
  );
  const sign = async (text: string) =>
    Buffer.from(
      await webcrypto.subtle.sign({ name: 'ECDSA', hash: 'SHA-256' }, keys.privateKey, Buffer.from(text)),
    ).toString('base64url');
  return {
    publicKey,
    sign,
    pairing: async (code: string, name: string) => ({
      code,
      name,
      publicKey,
      signature: await sign(pairingText(code, publicKey)),
    }),
    answer: async (device: string, challenge: string) => ({
      device,
      challenge,
      signature: await sign(challengeText(device, challenge)),
    }),
  };
}

/** A token that nobody was given. */
export const inventedToken = () => randomBytes(32).toString('base64url');

export const sha256Of = (text: string) => createHash('sha256').update(text).digest('hex');

const noNetwork: Network = {
  standing: () => ({ isOpen: false, addresses: [], trustPages: [], fingerprint: null, never: null }),
  open: async () => ({ ok: true, value: undefined }),
  close: async () => {},
  authority: () => undefined,
};
