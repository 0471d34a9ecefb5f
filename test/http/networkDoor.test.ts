import { scryptSync } from 'node:crypto';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openAccess } from '../../src/server/access/access.ts';
import { openAccessFile } from '../../src/server/access/accessFile.ts';
import { pieceFileRoutes } from '../../src/server/pieceFileRoutes.ts';
import { opening } from '../kits/drafts.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import {
  cookieOf,
  host,
  inventedToken,
  passphrase,
  sha256Of,
  testDevice,
  testDoors,
} from '../kits/testDoor.ts';

const codeOf = async (answer: Response) =>
  ((await answer.json()) as { faults?: { code: string }[] }).faults?.[0]?.code;

/** Every address that answers something of the record, and some that try to look like one that doesn't. */
const ofTheRecord = [
  '/knowledge.json',
  '/api/record',
  '/api/pieces',
  '/api/pieces/one',
  '/api/backups',
  '/api/own-knowledge',
  '/api/field-guide.pdf?form=side-chair',
  '/api/scale-card.pdf',
  '/api/nothing',
  '/api',
  '/%61pi/pieces',
  '/api%2fpieces',
  '//api/pieces',
  '/knowledge%2ejson',
  '/api/access/../pieces',
  '/%zz/api/pieces',
];

describe('somebody on the network who is not signed in', () => {
  it.each(ofTheRecord)('is told nothing at %s', async (path) => {
    const { ask, store } = await testDoors();
    store.append([opening('one')]);
    const answer = await ask(path);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(await answer.text()).not.toMatch(/"piece|"id"|signs/);
  });

  it('changes nothing', async () => {
    const { ask, store } = await testDoors();
    const answer = await ask('/api/pieces/one/events', { body: { events: [opening('one')] } });
    expect([answer.status, await codeOf(answer)]).toEqual([401, 'access.signed-out']);
    expect(store.pieces()).toEqual([]);
  });

  it.each([
    ['no cookie', ''],
    ['an invented token', `__Host-underside=${inventedToken()}`],
    ['an empty token', '__Host-underside='],
    ['a token of another length', '__Host-underside=abc'],
    ['a pattern', '__Host-underside=.*'],
    ['another name', `underside=${inventedToken()}`],
  ])('is not let in by %s', async (_what, cookie) => {
    const { ask, signIn } = await testDoors();
    await signIn();
    expect((await ask('/api/pieces', { cookie })).status).toBe(401);
  });

  it('is not let in by the hash that the file of sessions holds', async () => {
    const { ask, signIn, dataDir } = await testDoors();
    const cookie = await signIn();
    const kept = await readFile(join(dataDir, 'access', 'access.json'), 'utf8');
    const token = cookie.split('=')[1] ?? '';
    expect(kept).not.toContain(token);
    expect(kept).toContain(sha256Of(token));
    expect((await ask('/api/pieces', { cookie: `__Host-underside=${sha256Of(token)}` })).status).toBe(401);
  });

  it('reaches nothing that is done at the computer itself', async () => {
    const { ask, access } = await testDoors();
    for (const path of ['passphrase', 'code', 'network/open', 'devices/x/shut-out', 'sessions/x/end'])
      expect(
        (await ask(`/api/access/${path}`, { body: { passphrase: 'another passphrase of mine' } })).status,
      ).toBe(403);
    expect(access.hasPassphrase()).toBe(false);
  });
});

describe('somebody who signs in', () => {
  it('is let in, with a cookie that no script reads and no other site sends', async () => {
    const { ask, access } = await testDoors();
    await access.choosePassphrase(passphrase);
    const answer = await ask('/api/access/sign-in', { body: { passphrase } });
    const set = answer.headers.get('set-cookie') ?? '';
    for (const word of ['__Host-underside=', 'HttpOnly', 'Secure', 'SameSite=Strict', 'Path=/'])
      expect(set).toContain(word);
    expect(set).not.toContain('Domain');
    expect((await ask('/api/pieces', { cookie: cookieOf(answer) })).status).toBe(200);
  });

  it('gets a token nobody knew before: one that was planted is worth nothing', async () => {
    const { ask, access } = await testDoors();
    await access.choosePassphrase(passphrase);
    const planted = `__Host-underside=${inventedToken()}`;
    const answer = await ask('/api/access/sign-in', { body: { passphrase }, cookie: planted });
    expect(cookieOf(answer)).not.toBe(planted);
    expect((await ask('/api/pieces', { cookie: planted })).status).toBe(401);
    const again = await ask('/api/access/sign-in', { body: { passphrase }, cookie: cookieOf(answer) });
    expect((await ask('/api/pieces', { cookie: cookieOf(answer) })).status).toBe(401);
    expect((await ask('/api/pieces', { cookie: cookieOf(again) })).status).toBe(200);
  });

  it('is out after signing out, and everybody after signing out everywhere', async () => {
    const { ask, signIn } = await testDoors();
    const [one, two, three] = [await signIn(), await signIn(), await signIn()];
    await ask('/api/access/sign-out', { body: {}, cookie: one });
    expect((await ask('/api/pieces', { cookie: one })).status).toBe(401);
    expect((await ask('/api/pieces', { cookie: two })).status).toBe(200);
    expect((await ask('/api/access/sign-out-everywhere', { body: {} })).status).toBe(401);
    await ask('/api/access/sign-out-everywhere', { body: {}, cookie: two });
    for (const cookie of [two, three]) expect((await ask('/api/pieces', { cookie })).status).toBe(401);
  });

  it('is out after a week without a question, and after thirty days in any case', async () => {
    const day = 24 * 3_600_000;
    const { ask, signIn, clock } = await testDoors();
    const idle = await signIn();
    clock.now += 7 * day;
    expect((await ask('/api/pieces', { cookie: idle })).status).toBe(401);
    const busy = await signIn();
    for (let days = 0; days < 29; days += 1) {
      clock.now += day;
      expect((await ask('/api/pieces', { cookie: busy })).status).toBe(200);
    }
    clock.now += day;
    expect((await ask('/api/pieces', { cookie: busy })).status).toBe(401);
  });

  it('stays signed in when the program starts again, and is out when another passphrase is chosen', async () => {
    const { signIn, access, dataDir, clock, ask } = await testDoors();
    const cookie = await signIn();
    const again = openAccess(openAccessFile(dataDir), { now: () => clock.now });
    expect(again.sessions.find(cookie.split('=')[1] ?? '')).toBeDefined();
    await access.choosePassphrase('another set of words entirely');
    expect((await ask('/api/pieces', { cookie })).status).toBe(401);
  });

  it('may not say where on that computer back-ups go', async () => {
    const { ask, signIn } = await testDoors();
    const cookie = await signIn();
    for (const path of ['/api/backups/settings', '/api/backups/settings/', '/api/backups/%73ettings']) {
      const answer = await ask(path, { body: { folder: '/etc' }, cookie });
      expect([path, answer.status]).toEqual([path, 403]);
    }
  });

  it('can’t call its acts by the name of a paired device', async () => {
    const { ask, signIn, access, store } = await testDoors();
    const { code } = access.devices.newCode();
    await access.devices.pair(await (await testDevice()).pairing(code, 'Kitchen tablet'));
    const cookie = await signIn();
    const body = { events: [{ ...opening('one'), device: 'kitchen tablet' }] };
    expect((await ask('/api/pieces/one/events', { body, cookie })).status).toBe(200);
    expect(store.history('one')[0]?.device).toBe('kitchen tablet (by passphrase)');
  });
});

describe('another page in the browser of somebody who is signed in', () => {
  it.each([
    ['posts across sites', { origin: 'https://evil.example', 'sec-fetch-site': 'cross-site' }],
    ['posts from another port', { origin: 'https://192.168.1.20:9999', 'sec-fetch-site': 'same-site' }],
    ['posts from the same address over http', { origin: `http://${host}`, 'sec-fetch-site': 'cross-site' }],
    ['posts a form', { 'x-underside': '', 'content-type': 'text/plain' }],
    ['says nothing but another origin', { origin: 'https://evil.example' }],
  ])('changes nothing when it %s', async (_what, headers) => {
    const { ask, signIn, store } = await testDoors();
    const cookie = await signIn();
    const body = { events: [opening('one')] };
    const wish = { body, cookie, headers: headers as Record<string, string> };
    expect((await ask('/api/pieces/one/events', wish)).status).toBe(403);
    expect((await ask('/api/access/sign-out-everywhere', wish)).status).toBe(403);
    expect(store.pieces()).toEqual([]);
    expect((await ask('/api/pieces', { cookie })).status).toBe(200);
  });

  it.each(['cross-site', 'same-site'])('is told nothing when it asks %s', async (site) => {
    const { ask, signIn } = await testDoors();
    const cookie = await signIn();
    for (const path of ['/api/pieces', '/knowledge.json', '/api/access/standing'])
      expect((await ask(path, { cookie, headers: { 'sec-fetch-site': site } })).status).toBe(403);
  });

  it.each([
    'evil.example',
    'localhost:4718',
    '127.0.0.1:4718',
    '192.168.1.21',
    'office.local.evil.example',
    '',
  ])('finds nobody under the name “%s” that it points here', async (name) => {
    const { ask, signIn } = await testDoors();
    const cookie = await signIn();
    const answer = await ask('/api/pieces', { cookie, headers: { host: name } });
    expect([answer.status, await codeOf(answer)]).toEqual([403, 'server.strange-host']);
  });

  it('can’t have the page in a frame, or load what is not ours', async () => {
    const { ask } = await testDoors();
    const { headers } = await ask('/api/access/standing');
    expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
    expect(headers.get('content-security-policy')).not.toMatch(/https?:|\*|unsafe/);
    expect(headers.get('cache-control')).toBe('no-store');
  });
});

describe('guessing', () => {
  const guess = (doors: Awaited<ReturnType<typeof testDoors>>, from?: string) =>
    doors.ask('/api/access/sign-in', {
      body: { passphrase: 'not it' },
      ...(from === undefined ? {} : { from }),
    });

  it('waits longer after each wrong try, and says how long', async () => {
    const doors = await testDoors();
    await doors.access.choosePassphrase(passphrase);
    const answers = [];
    for (let tries = 0; tries < 6; tries += 1) answers.push(await guess(doors));
    expect(answers.map(({ status }) => status)).toEqual([403, 403, 403, 403, 403, 429]);
    expect(answers[5]?.headers.get('retry-after')).toBe('2');
    expect(await codeOf(answers[5] as Response)).toBe('access.wait');
    doors.clock.now += 2000;
    expect((await guess(doors)).status).toBe(403);
    expect((await guess(doors)).headers.get('retry-after')).toBe('4');
  });

  it('gains nothing by many tries at once', async () => {
    const doors = await testDoors();
    await doors.access.choosePassphrase(passphrase);
    const answers = await Promise.all(Array.from({ length: 20 }, () => guess(doors)));
    expect(answers.filter(({ status }) => status === 403)).toHaveLength(5);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(15);
  });

  it('never shuts out the computer itself, whoever is signed in, or a paired device', async () => {
    const doors = await testDoors();
    const { ask, home, access, signIn } = doors;
    const device = await testDevice();
    const paired = await access.devices.pair(await device.pairing(access.devices.newCode().code, 'Tablet'));
    if (!paired.ok) throw new Error('not paired');
    const cookie = await signIn();
    for (let tries = 0; tries < 8; tries += 1) await guess(doors);
    expect((await ask('/api/access/sign-in', { body: { passphrase } })).status).toBe(429);
    expect((await ask('/api/pieces', { cookie })).status).toBe(200);
    expect((await home.request('http://127.0.0.1:4717/api/pieces')).status).toBe(200);
    const challenged = await ask('/api/access/challenge', { body: { device: paired.value.id } });
    const { challenge } = (await challenged.json()) as { challenge: string };
    const body = await device.answer(paired.value.id, challenge);
    expect((await ask('/api/access/device', { body })).status).toBe(200);
  });
});

describe('what is larger than it may be', () => {
  it('is not taken in, whether it says its length or not, and nothing of it stays', async () => {
    const workDir = await temporaryFolder();
    const { store } = await testDoors();
    const routes = pieceFileRoutes({ workDir, store } as never, 1000);
    const send = (headers: Record<string, string>) =>
      routes.request('/piece-files', {
        method: 'PUT',
        headers,
        body: new Blob([new Uint8Array(5000)]).stream(),
        duplex: 'half',
      } as RequestInit);
    for (const headers of [{ 'content-length': '5000' }, {}] as Record<string, string>[]) {
      const answer = await send(headers);
      expect([answer.status, await codeOf(answer)]).toEqual([413, 'piece-file.too-large']);
    }
    expect(await readdir(join(workDir, 'incoming'))).toEqual([]);
  });

  it('is not read as an act of somebody who is signed in', async () => {
    const { ask, signIn, store } = await testDoors();
    const cookie = await signIn();
    const body = JSON.stringify({ events: [opening('one')], more: 'x'.repeat(2_100_000) });
    const answer = await ask('/api/pieces/one/events', { body, cookie });
    expect([answer.status, await codeOf(answer)]).toEqual([422, 'server.too-large']);
    expect(store.pieces()).toEqual([]);
  });
});

describe('what is kept', () => {
  it('takes as much work to guess as is published', async () => {
    const file = openAccessFile(await temporaryFolder());
    const access = openAccess(file);
    await access.choosePassphrase(passphrase);
    // OWASP, Password Storage Cheat Sheet: scrypt with N = 2^17, r = 8, p = 1 (from memory).
    expect(file.state.passphrase).toMatchObject({ N: 131_072, r: 8, p: 1 });
    const { salt = '', hash } = file.state.passphrase ?? {};
    const wanted = scryptSync(passphrase, Buffer.from(salt, 'base64url'), 32, {
      N: 131_072,
      r: 8,
      p: 1,
      maxmem: 2 ** 28,
    });
    expect(hash).toBe(wanted.toString('base64url'));
  });

  it('holds no passphrase, and only its owner reads it', async () => {
    const { signIn, dataDir } = await testDoors();
    await signIn();
    const path = join(dataDir, 'access', 'access.json');
    expect(await readFile(path, 'utf8')).not.toContain('dovetails');
    expect(((await stat(path)).mode & 0o777).toString(8)).toBe('600');
  });

  it.each(['short one', 'aaaaaaaaaaaaaaaaaaaaaaa', 'abababababababababab', ' '.repeat(30)])(
    'refuses the passphrase “%s”',
    async (bad) => {
      const { access } = await testDoors();
      expect(await access.choosePassphrase(bad)).toMatchObject({ ok: false });
      expect(access.hasPassphrase()).toBe(false);
    },
  );
});
