import { execFile } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { request as plainRequest } from 'node:http';
import { request } from 'node:https';
import { isIP } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openAccess } from '../../src/server/access/access.ts';
import { openAccessFile } from '../../src/server/access/accessFile.ts';
import { openDoors } from '../../src/server/door/openDoors.ts';
import { openAuthority } from '../../src/server/network/authority.ts';
import { makeServerCertificate } from '../../src/server/network/certificate.ts';
import { isLocalAddress, ownAddresses, ownLocalName } from '../../src/server/network/ownAddresses.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { testApp } from '../kits/testApp.ts';
import { passphrase } from '../kits/testDoor.ts';

const day = 24 * 3_600_000;

/** Both doors on a folder of their own, with a passphrase that takes little work. */
async function doorsOn(networkAddress: string, hasPassphrase = true) {
  const dataDir = await temporaryFolder();
  if (hasPassphrase)
    await openAccess(openAccessFile(dataDir), { cost: { N: 1024, r: 8, p: 1 } }).choosePassphrase(passphrase);
  const { house } = await testApp();
  const doors = openDoors(house, { dataDir, port: 0, readOnly: undefined, networkAddress });
  onTestFinished(() => doors.network.close());
  const post = (path: string, body: unknown) =>
    doors.home.request(`http://127.0.0.1:4717/api/access/${path}`, {
      method: 'POST',
      headers: { 'x-underside': '1' },
      body: JSON.stringify(body),
    });
  return { ...doors, dataDir, post };
}

/** Asks over a real socket, trusting the certificates given and no others. */
function askSecurely(url: string, ca?: string): Promise<{ status: number; body: string }> {
  return new Promise((resolve, reject) => {
    const asked = request(url, ca === undefined ? {} : { ca }, (answer) => {
      let body = '';
      answer.on('data', (chunk) => {
        body += chunk;
      });
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body }));
    });
    asked.on('error', reject).end();
  });
}

describe('the network', () => {
  it('is shut until a passphrase is chosen and somebody at the computer opens it', async () => {
    const { network, post } = await doorsOn('127.0.0.1', false);
    expect(network.standing().isOpen).toBe(false);
    expect((await post('network/open', {})).status).toBe(422);
    expect(network.standing().isOpen).toBe(false);
    await post('passphrase', { passphrase });
    expect(network.standing().isOpen).toBe(false);
    expect((await post('network/open', {})).status).toBe(200);
    expect(network.standing().isOpen).toBe(true);
  });

  it.each(['8.8.8.8', '172.32.0.1', '2001:db8::1'])(
    'is never opened at %s, an address of the internet',
    async (address) => {
      const { post, network } = await doorsOn(address);
      const answer = await post('network/open', {});
      expect(await answer.json()).toMatchObject({ faults: [{ code: 'network.not-local' }] });
      expect(network.standing().isOpen).toBe(false);
    },
  );

  it('lets a client in that trusts the authority and asks it to sign in; one that does not trust it refuses to speak', async () => {
    const { post, network } = await doorsOn('127.0.0.1');
    await post('network/open', {});
    const { addresses, trustPages, fingerprint } = network.standing();
    const address = addresses[0] ?? '';
    const { pem } = network.authority() ?? { pem: '' };
    expect(new X509Certificate(pem).fingerprint256.replaceAll(':', ' ')).toBe(fingerprint);
    expect(await askSecurely(`${address}api/pieces`, pem)).toMatchObject({ status: 401 });
    await expect(askSecurely(`${address}api/pieces`)).rejects.toThrow(/verify|self.signed|issuer/i);
    const other = await openAuthority(await temporaryFolder());
    await expect(askSecurely(`${address}api/pieces`, other.pem)).rejects.toThrow();
    // Over plain http there is the page on trust and the certificate, and nothing else.
    const page = await fetch(trustPages[0] ?? '');
    expect(await page.text()).toContain(fingerprint?.slice(0, 23));
    const file = await fetch(`${trustPages[0]}underside-authority.crt`);
    expect(new X509Certificate(Buffer.from(await file.arrayBuffer())).fingerprint256).toBe(
      new X509Certificate(pem).fingerprint256,
    );
    for (const path of ['api/pieces', 'knowledge.json', 'api/access/standing', '../access/authority.key.pem'])
      expect((await fetch(`${trustPages[0]}${path}`)).status).toBe(404);
    const strange = await new Promise<number>((resolve, reject) => {
      const asked = plainRequest(trustPages[0] ?? '', { headers: { host: 'evil.example' } }, (answer) => {
        answer.resume();
        resolve(answer.statusCode ?? 0);
      });
      asked.on('error', reject).end();
    });
    expect(strange).toBe(403);
    await network.close();
    await expect(askSecurely(`${address}api/pieces`, pem)).rejects.toThrow(/ECONNREFUSED|socket/);
  });
});

describe('the authority', () => {
  it('is made once, its key for its owner only, and vouches for this machine’s names and addresses', async () => {
    const dataDir = await temporaryFolder();
    const names = ['192.168.1.20', 'fd00::2', 'office.local'];
    const made = await openAuthority(dataDir);
    const again = await openAuthority(dataDir);
    expect(again.pem).toBe(made.pem);
    expect(((await stat(join(dataDir, 'access', 'authority.key.pem'))).mode & 0o777).toString(8)).toBe('600');
    const server = await made.serverFor(names);
    const read = new X509Certificate(server.certificate);
    expect(read.checkIssued(new X509Certificate(made.pem))).toBe(true);
    for (const name of names) expect(isIP(name) ? read.checkIP(name) : read.checkHost(name)).toBeDefined();
    expect(read.checkHost('example.com')).toBeUndefined();
    // Apple accepts at most 825 days of an authority that a person added (from memory).
    expect(Date.parse(read.validTo) - Date.parse(read.validFrom)).toBeLessThan(825 * day);
    expect(read.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1']);
    expect(await made.serverFor(names)).toEqual(server);
    expect((await made.serverFor([...names, '10.0.0.7'])).certificate).not.toBe(server.certificate);
  });

  it('renews the certificate a month before its end, and itself never without need', async () => {
    const dataDir = await temporaryFolder();
    const clock = { now: Date.now() };
    const at = () => openAuthority(dataDir, () => clock.now);
    const first = await (await at()).serverFor(['10.0.0.7']);
    clock.now += 59 * day;
    expect((await (await at()).serverFor(['10.0.0.7'])).certificate).toBe(first.certificate);
    clock.now += 2 * day;
    const next = await (await at()).serverFor(['10.0.0.7']);
    expect(next.certificate).not.toBe(first.certificate);
    expect(new X509Certificate(next.certificate).checkIssued(new X509Certificate((await at()).pem))).toBe(
      true,
    );
  });

  it('makes both anew where their files are damaged', async () => {
    const dataDir = await temporaryFolder();
    const first = await openAuthority(dataDir);
    const path = join(dataDir, 'access', 'authority.certificate.pem');
    await writeFile(path, (await readFile(path, 'utf8')).slice(0, 300));
    expect((await openAuthority(dataDir)).fingerprint).not.toBe(first.fingerprint);
  });

  it('is taken by OpenSSL for local names, and for no name of the internet', async () => {
    const dataDir = await temporaryFolder();
    const authority = await openAuthority(dataDir);
    const key = await readFile(join(dataDir, 'access', 'authority.key.pem'), 'utf8');
    const span = { from: new Date(Date.now() - day), to: new Date(Date.now() + 30 * day) };
    const verify = async (names: string[]) => {
      const file = join(dataDir, 'server.pem');
      const made = await makeServerCertificate(names, span, { key, certificate: authority.pem });
      await writeFile(file, made.certificate);
      const ca = join(dataDir, 'access', 'authority.certificate.pem');
      const args = ['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', ca, file];
      return promisify(execFile)('openssl', args).then(
        ({ stdout }) => stdout,
        (error) => `${error.stdout}${error.stderr}`,
      );
    };
    expect(await verify(['192.168.1.20', 'fd00::2', 'office.local'])).toContain('OK');
    expect(await verify(['example.com'])).toContain('permitted subtree violation');
    expect(await verify(['8.8.8.8'])).toContain('permitted subtree violation');
  });
});

describe('addresses', () => {
  // RFC 1918, RFC 4193.
  it.each([
    ['10.1.2.3', true],
    ['172.16.0.1', true],
    ['172.31.255.1', true],
    ['192.168.0.4', true],
    ['fd12::1', true],
    ['::1', true],
    ['172.32.0.1', false],
    ['192.169.0.1', false],
    ['100.64.0.1', false],
    ['0.0.0.0', false],
    ['::', false],
    ['2001:db8::1', false],
    ['fe80::1', false],
  ])('knows whether %s is local: %s', (address, isLocal) => {
    expect(isLocalAddress(address)).toBe(isLocal);
  });

  it('takes this machine’s own on local networks only, and a name that can be one', () => {
    const one = (address: string, internal = false) => ({ address, internal }) as never;
    expect(
      ownAddresses({
        lo: [one('127.0.0.1', true)],
        a: [one('fd00::2'), one('192.168.1.20'), one('203.0.113.9')],
      }),
    ).toEqual(['192.168.1.20', 'fd00::2']);
    expect([ownLocalName('Office.fritz.box'), ownLocalName('-x_'), ownLocalName('')]).toEqual([
      'office.local',
      undefined,
      undefined,
    ]);
  });
});
