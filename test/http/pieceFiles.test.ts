import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { act, finding, opening } from '../kits/drafts.ts';
import { pieceRecord } from '../kits/pieceRecord.ts';
import { testApp } from '../kits/testApp.ts';

const own = { 'x-underside': '1', 'content-type': 'application/zip' };

/** A record with a piece and a photo, its file, and the server on another record to bring it into. */
async function twoRecords() {
  const first = await pieceRecord();
  first.enter(opening('one'), finding('one', 'a', 'splat'));
  await first.photograph('one', 'p1');
  const second = await pieceRecord();
  const { app } = await testApp({
    parts: {
      store: second.store,
      photos: second.photos,
      dataDir: second.dir,
      pieceFiles: { workDir: second.dir, takeOut: async () => ({ ok: false, faults: [] }) },
    },
  });
  const put = (body: Uint8Array | undefined, query = '', headers: Record<string, string> = own) =>
    app.request(`http://127.0.0.1:4717/api/piece-files${query}`, {
      method: 'PUT',
      headers,
      ...(body === undefined ? {} : { body: Buffer.from(body) }),
    });
  return { first, second, put, file: await readFile(await first.takeOut('one')) };
}

const codeOf = async (answer: Response) =>
  [answer.status, ((await answer.json()) as { faults: { code: string }[] }).faults[0]?.code] as const;

describe('PUT /api/piece-files', () => {
  it('brings a piece in with its photo, is harmless twice and at once, and leaves nothing lying about', async () => {
    const { first, second, put, file } = await twoRecords();
    const came = await Promise.all([put(file), put(file)]);
    expect(came.map(({ status }) => status)).toEqual([200, 200]);
    expect(await Promise.all(came.map((one) => one.json()))).toEqual([
      { piece: 'one', added: 3, known: 0, photos: 1, remarks: [] },
      { piece: 'one', added: 0, known: 3, photos: 1, remarks: [] },
    ]);
    expect(second.store.piece('one')?.piece).toEqual(first.store.piece('one')?.piece);
    expect(await readdir(`${second.dir}/incoming`)).toEqual([]);
  });

  it('refuses what both changed, and brings it in beside when asked', async () => {
    const { first, second, put, file } = await twoRecords();
    await put(file);
    for (const record of [first, second])
      record.enter(act('one', 'piece-described', [{ path: ['title'], to: `Of ${record.dir}` }]));
    const changed = await readFile(await first.takeOut('one'));
    expect(await codeOf(await put(changed))).toEqual([422, 'adopt.both-changed']);
    expect(second.store.pieces()).toEqual(['one']);
    const beside = await put(changed, '?beside=yes');
    expect([beside.status, second.store.pieces().length]).toEqual([200, 2]);
  });

  it('refuses nothing at all, no zip, a cut one, and pages of others, and keeps nothing of them', async () => {
    const { second, put, file } = await twoRecords();
    expect(await codeOf(await put(undefined))).toEqual([422, 'piece-file.empty']);
    expect(await codeOf(await put(Buffer.from('Dear Sir')))).toEqual([422, 'piece-file.damaged']);
    expect(await codeOf(await put(file.subarray(0, file.length - 100)))).toEqual([422, 'piece-file.damaged']);
    expect(await codeOf(await put(file, '', { 'content-type': 'application/zip' }))).toEqual([
      403,
      'server.other-page',
    ]);
    expect(second.store.pieces()).toEqual([]);
    expect(await readdir(`${second.dir}/incoming`)).toEqual([]);
    expect(await readdir(`${second.dir}/photos`)).toEqual([]);
  });
});
