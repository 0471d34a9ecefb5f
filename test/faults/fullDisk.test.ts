import { execFileSync } from 'node:child_process';
import { closeSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { openPhotos, photoLimits } from '../../src/record/photos.ts';
import type { SqliteDatabase } from '../../src/record/sqlite/openSqlite.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { finding, opening, step } from '../kits/drafts.ts';
import { gradient, sha256 } from '../kits/pictures.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { type TestApp, testApp } from '../kits/testApp.ts';

/** Every database that is opened, so that a test can say how many pages it may have. */
const disk = vi.hoisted(() => ({ opened: [] as SqliteDatabase[], pages: 0 }));
vi.mock('../../src/record/sqlite/openSqlite.ts', async (original) => {
  const real = await original<typeof import('../../src/record/sqlite/openSqlite.ts')>();
  return {
    ...real,
    openSqlite: (...words: Parameters<typeof real.openSqlite>) => {
      const database = real.openSqlite(...words);
      if (disk.pages > 0) database.pragma(`max_page_count = ${disk.pages}`);
      disk.opened.push(database);
      return database;
    },
  };
});

/** The longest words a finding may have, so that a disk fills soon. */
const large = (n: number) => {
  const one = finding('one', `sign-${n}`, 'splat');
  const [change] = one.changes;
  return { ...one, changes: [{ ...change, to: { ...(change?.to as object), words: 'worn '.repeat(300) } }] };
};

/** Enters findings until one is refused; what was answered for, and the one that was not with its answer. */
async function enterUntilFull({ post }: TestApp) {
  const accepted: string[] = [];
  for (let n = 0; n < 2000; n++) {
    const act = large(n);
    const answer = await post('/api/pieces/one/events', { events: [act] });
    if (answer.status !== 200) return { accepted, refused: act, answer };
    accepted.push(act.id);
  }
  throw new Error('The disk was never full.');
}

async function appIn(dir: string): Promise<TestApp> {
  const log = sqliteLog(join(dir, 'record.db'));
  onTestFinished(() => log.close());
  const photos = await openPhotos(dir, { ...photoLimits, heicWorker: new URL('file:///none') });
  const app = await testApp({ parts: { store: createStore(log), photos } });
  expect((await app.post('/api/pieces/one/events', { events: [opening('one')] })).status).toBe(200);
  return app;
}

async function idsOf({ get }: TestApp): Promise<string[]> {
  const { events } = (await (await get('/api/pieces/one/history')).json()) as { events: { id: string }[] };
  return events.map(({ id }) => id).slice(1);
}

/** What must hold from the moment that the disk is full until there is room. */
async function holdsWhileFull(
  app: TestApp,
  dir: string,
  { accepted, answer }: Awaited<ReturnType<typeof enterUntilFull>>,
): Promise<void> {
  expect(accepted.length).toBeGreaterThan(3);
  expect(answer.status).toBe(507);
  expect(await answer.json()).toEqual({
    faults: [
      {
        code: 'record.disk-full',
        path: '',
        message: 'The disk is full, and nothing was written: free some space and try again.',
      },
    ],
  });
  expect(await idsOf(app)).toEqual(accepted);
  const view = (await (await app.get('/api/pieces/one')).json()) as { piece: { findings: object } };
  expect(Object.keys(view.piece.findings)).toHaveLength(accepted.length);
  expect((await app.get('/api/pieces')).status).toBe(200);
  expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [], events: accepted.length + 1 });
  expect(app.faults).toEqual([]);
}

/** The act that was refused is taken as it is, what follows too, and it is all there when the record is opened again. */
async function goesOn(
  app: TestApp,
  dir: string,
  { accepted, refused }: Awaited<ReturnType<typeof enterUntilFull>>,
): Promise<void> {
  for (const act of [refused, large(5000)]) {
    expect((await app.post('/api/pieces/one/events', { events: [act] })).status).toBe(200);
    accepted.push(act.id);
  }
  expect(await idsOf(app)).toEqual(accepted);
  expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [], events: accepted.length + 1 });
  const again = sqliteLog(join(dir, 'record.db'));
  expect(
    again
      .ofPiece('one')
      .map(({ event }) => event.id)
      .slice(1),
  ).toEqual(accepted);
  again.close();
  expect(app.faults).toEqual([]);
}

describe('a record that may not grow', () => {
  it('refuses plainly, keeps all it answered for, and goes on where there is room', async () => {
    const dir = await temporaryFolder();
    const app = await appIn(dir);
    const database = disk.opened.at(-1) as SqliteDatabase;
    database.pragma(`max_page_count = ${Number(database.pragma('page_count')) + 8}`);
    const came = await enterUntilFull(app);
    await holdsWhileFull(app, dir, came);
    database.pragma('max_page_count = 100000');
    await goesOn(app, dir, came);
  });

  it('is not begun on a full disk: one sentence says so', async () => {
    disk.pages = 2;
    onTestFinished(() => {
      disk.pages = 0;
    });
    const dir = await temporaryFolder();
    expect(() => sqliteLog(join(dir, 'record.db'))).toThrow(
      expect.objectContaining({
        code: 'record.disk-full',
        message: expect.stringMatching(
          /^The disk of .*record\.db is full: free some space and start again\./,
        ),
      }),
    );
    disk.pages = 0;
    const app = await appIn(dir);
    expect(await idsOf(app)).toEqual([]);
  });
});

/** A disk of a megabyte and a half, where this user may mount one. */
async function smallDisk(): Promise<string | undefined> {
  const dir = await temporaryFolder();
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1536k', 'tmpfs', dir], { stdio: 'ignore' });
  } catch {
    return undefined;
  }
  onTestFinished(() => void execFileSync('umount', ['-l', dir]));
  return dir;
}

/** Fills a disk to its last byte; removing the file makes room. */
function fill(path: string): void {
  const file = openSync(path, 'w');
  try {
    for (const size of [4096, 512, 1]) fillBy(file, Buffer.alloc(size, 7));
  } finally {
    closeSync(file);
  }
}

function fillBy(file: number, piece: Buffer): void {
  try {
    for (;;) writeSync(file, piece);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error;
  }
}

describe('a disk that is truly full', () => {
  it('takes no act and no photo, loses none, and both are taken when there is room', async ({ skip }) => {
    const dir = await smallDisk();
    if (dir === undefined) return skip('This user may not mount a small disk.');
    const app = await appIn(dir);
    const bytes = await gradient(400, 300).jpeg({ quality: 100 }).toBuffer();
    const send = () =>
      app.app.request(`http://127.0.0.1:4717/api/photos/${sha256(bytes)}`, {
        method: 'PUT',
        headers: { 'x-underside': '1' },
        body: new Uint8Array(bytes),
      });
    const first = [large(9001), large(9002), large(9003), large(9004)];
    for (const act of first)
      expect((await app.post('/api/pieces/one/events', { events: [act] })).status).toBe(200);
    const ballast = join(dir, 'ballast');
    fill(ballast);
    const came = await enterUntilFull(app);
    came.accepted.unshift(...first.map(({ id }) => id));
    await holdsWhileFull(app, dir, came);
    const undone = await app.post('/api/pieces/one/undo', step());
    expect(undone.status).toBe(507);
    const photo = await send();
    expect(await photo.json()).toMatchObject({ faults: [{ code: 'photo.disk-full' }] });
    expect(photo.status).toBe(507);
    expect(app.faults).toEqual([]);
    rmSync(ballast);
    expect((await send()).status).toBe(200);
    await goesOn(app, dir, came);
  });
});
