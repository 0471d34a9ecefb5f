import { request } from 'node:http';
import { connect } from 'node:net';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openPhotos, photoLimits } from '../../src/record/photos.ts';
import { type Listening, listen } from '../../src/server/listen.ts';
import { builtWorker } from '../kits/builtWorker.ts';
import { decompressionBomb, gradient, kinds, sha256 } from '../kits/pictures.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { testApp } from '../kits/testApp.ts';

let heicWorker: URL;
let listening: Listening;

beforeAll(async () => {
  heicWorker = await builtWorker('src/record/heicWorker.ts');
});
afterEach(() => listening.close());

async function start(): Promise<string> {
  const photos = await openPhotos(await temporaryFolder(), { ...photoLimits, heicWorker });
  const { app } = await testApp({ parts: { photos } });
  const outcome = await listen(app, 0);
  if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
  listening = outcome.value;
  return listening.address;
}

const send = (address: string, sha: string, body: Uint8Array, headers: Record<string, string> = {}) =>
  fetch(`${address}api/photos/${sha}`, {
    method: 'PUT',
    headers: { 'x-underside': '1', ...headers },
    body: new Uint8Array(body),
  });

describe('over a real socket', () => {
  it('answers on this machine only', async () => {
    const address = await start();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect((await fetch(`${address}api/pieces`)).status).toBe(200);
  });

  it.each(kinds)('takes a photo of kind %s in and gives it back whole', async (mediaType, make) => {
    const address = await start();
    const bytes = await make();
    const sha = sha256(bytes);
    const kept = await send(address, sha, bytes, { 'x-name': encodeURIComponent('Stuhl – rück­seitig.heic') });
    expect(await kept.json()).toMatchObject({
      sha256: sha,
      mediaType,
      bytes: bytes.length,
      widthPx: 320,
      heightPx: 200,
      note: expect.any(String),
    });
    const original = await fetch(`${address}api/photos/${sha}/original`);
    expect(original.headers.get('content-type')).toBe(mediaType);
    expect(sha256(new Uint8Array(await original.arrayBuffer()))).toBe(sha);
    for (const size of ['view', 'thumb']) {
      const shown = await fetch(`${address}api/photos/${sha}/${size}`);
      expect(shown.headers.get('content-type')).toBe('image/jpeg');
      expect(shown.headers.get('cache-control')).toContain('immutable');
    }
  });

  it('says so where a name promises another kind than the bytes are', async () => {
    const address = await start();
    const bytes = await gradient().png().toBuffer();
    const kept = (await (await send(address, sha256(bytes), bytes, { 'x-name': 'chair.jpg' })).json()) as {
      note: string;
    };
    expect(kept.note).toContain('The file is called .jpg and is a PNG; it was taken in as that.');
  });

  it('refuses what is no photo, a wrong hash and a bomb, each in a sentence, and goes on', async () => {
    const address = await start();
    const good = await gradient().jpeg().toBuffer();
    const text = Buffer.from('no photo');
    const bomb = decompressionBomb();
    const cases: [string, Uint8Array, number, string][] = [
      [sha256(text), text, 415, 'photo.not-a-photo'],
      ['f'.repeat(64), good, 422, 'photo.other-bytes'],
      [sha256(bomb), bomb, 422, 'photo.too-many-pixels'],
    ];
    for (const [sha, bytes, status, code] of cases) {
      const answer = await send(address, sha, bytes);
      expect([answer.status, await answer.json()]).toMatchObject([
        status,
        { faults: [{ code, message: expect.stringMatching(/\.$/) }] },
      ]);
      expect((await fetch(`${address}api/photos/${sha}/view`)).status).toBe(404);
    }
    expect((await send(address, sha256(good), good)).status).toBe(200);
  });

  it('refuses a photo that says it is larger than the limit before it is sent', async () => {
    const address = await start();
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const asked = request(`${address}api/photos/${'a'.repeat(64)}`, {
        method: 'PUT',
        headers: { 'x-underside': '1', 'content-length': String(photoLimits.mostBytes + 1) },
      });
      asked.once('response', (answer) => resolve(answer.statusCode));
      asked.once('error', reject);
      asked.flushHeaders();
    });
    expect(status).toBe(413);
  });

  it('keeps nothing of an upload whose line was cut, and goes on', async () => {
    const address = await start();
    const bytes = await gradient(800, 600).png().toBuffer();
    const sha = sha256(bytes);
    await new Promise<void>((resolve) => {
      const socket = connect(Number(new URL(address).port), '127.0.0.1', () => {
        socket.write(
          `PUT /api/photos/${sha} HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Underside: 1\r\nContent-Length: ${bytes.length}\r\n\r\n`,
        );
        socket.write(bytes.subarray(0, 500), () => socket.destroy());
      });
      socket.once('close', () => resolve());
    });
    expect((await fetch(`${address}api/photos/${sha}/original`)).status).toBe(404);
    expect((await send(address, sha, bytes)).status).toBe(200);
  });

  it('turns away a strange host as the socket says it', async () => {
    const address = await start();
    const status = await new Promise((resolve) => {
      request(`${address}api/pieces`, { headers: { host: 'evil.example' } }, (answer) =>
        resolve(answer.statusCode),
      ).end();
    });
    expect(status).toBe(403);
  });
});
