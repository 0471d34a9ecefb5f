import { spawn, spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { chmod, chown, cp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { RecordedEvent } from '../../src/piece/event.ts';
import { openFolder } from '../../src/record/openFolder.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { verifyReport } from '../../src/record/verifyReport.ts';
import { startServer } from '../browser/support/startServer.ts';
import { finding, opening } from '../kits/drafts.ts';
import { folderStamp } from '../kits/folderStamp.ts';
import { pieceRecord } from '../kits/pieceRecord.ts';
import { runStart } from '../kits/runStart.ts';
import { signedRecord } from '../kits/signedRecord.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const mine = { 'x-underside': '1', 'content-type': 'application/json' };
const look = (dir: string) =>
  openFolder(dir, { programVersion: '0.1.0', readOnly: true, now: new Date(2026, 10, 30, 10, 45) });

/** A copy of a record with acts that wait in the file beside it, as a pulled stick or a killed program leaves them. */
async function copiedRecord() {
  const made = await signedRecord();
  const dir = join(await temporaryFolder(), 'copy');
  await cp(made.dir, dir, { recursive: true });
  await rm(join(dir, 'record.db-shm'), { force: true });
  const head = made.store.head();
  made.log.close();
  return { dir, pdf: made.pdf, head };
}

describe('a folder that is looked at only', () => {
  it('shows every act, also those that wait beside the record, and is left as it was to the byte', async () => {
    const { dir, head, pdf } = await copiedRecord();
    expect((await readFile(join(dir, 'record.db-wal'))).length).toBeGreaterThan(4096);
    const before = await folderStamp(dir);
    const opened = look(dir);
    expect(opened.log.recordHead()).toEqual(head);
    expect(opened.log.ofPiece('one')).toHaveLength(6);
    expect(opened.readOnly?.code).toBe('asked');
    const [one] = opened.log.ofPiece('one');
    expect(() => opened.log.append([{ ...(one?.event as RecordedEvent), id: 'another' }])).toThrow();
    expect(opened.workDir.startsWith(dir)).toBe(false);
    opened.close();
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [], revisions: 1 });
    expect((await verifyReport(pdf, dir)).verdict).toBe('issued');
    expect(await folderStamp(dir)).toEqual(before);
    const left = (await readdir(tmpdir())).filter((name) =>
      name.startsWith(`underside-look-${process.pid}-`),
    );
    expect(left).toEqual([]);
  });

  it('can be toured over HTTP, prints and computes, takes nothing in, and is left as it was to the byte', async () => {
    const { dir, pdf } = await copiedRecord();
    const before = await folderStamp(dir);
    const server = await startServer(dir, 0, ['--read-only']);
    onTestFinished(() => server.stop());
    const get = (path: string) => fetch(server.address + path);
    const send = (method: string, path: string, body: unknown = {}) =>
      fetch(server.address + path, { method, headers: mine, body: JSON.stringify(body) });
    const record = (await (await get('api/record')).json()) as { readOnly: { code: string; words: string } };
    expect(record.readOnly.code).toBe('asked');
    expect(server.printed()).toContain('is open read-only. Everything can be viewed and printed');
    const view = (await (await get('api/pieces/one')).json()) as {
      readOnly: boolean;
      piece: { photos: { p1: { sha256: string } } };
    };
    expect(view.readOnly).toBe(true);
    const sha = view.piece.photos.p1.sha256;
    for (const path of [
      'api/pieces',
      'api/pieces/one/history',
      'api/pieces/one/issued/1/comparison',
      `api/photos/${sha}/original`,
      `api/photos/${sha}/view`,
      `api/photos/${sha}/thumb`,
      'api/pieces/one/opinion.pdf',
      'api/own-knowledge',
      'api/backups',
      'knowledge.json',
      'piece/one/examination',
    ])
      expect((await get(path)).status, path).toBe(200);
    const reprint = Buffer.from(await (await get('api/pieces/one/issued/1/opinion.pdf')).arrayBuffer());
    expect(reprint.equals(pdf)).toBe(true);
    const weigh = { form: 'side-chair', mode: 'in-hand', findings: [], draws: 10 };
    expect((await send('POST', 'api/calc/evidence.weigh', weigh)).status).toBe(200);
    const out = await ended(get, await send('POST', 'api/pieces/one/file'));
    expect((await (await get(`api/piece-files/${out}`)).arrayBuffer()).byteLength).toBeGreaterThan(10_000);

    const stepped = { id: randomUUID(), who: '', device: 'tablet-1', at: '2026-11-30T10:00:00Z' };
    for (const [method, path, body] of [
      ['POST', 'api/pieces/one/events', { events: [finding('one', 'c', 'splat')] }],
      ['POST', 'api/pieces/one/undo', stepped],
      ['POST', 'api/pieces/example-armchair/copy', { who: '', device: 'a', at: stepped.at }],
      ['POST', 'api/pieces/one/issue', { ...stepped, name: 'P', day: '2026-11-30', seq: 6 }],
      ['PUT', `api/photos/${'a'.repeat(64)}`, {}],
      ['PUT', 'api/own-knowledge/sign/mine', {}],
      ['POST', 'api/own-knowledge/undo', {}],
      ['POST', 'api/backups', {}],
      ['POST', 'api/backups/settings', { daily: false }],
      ['PUT', 'api/piece-files', {}],
    ] as const) {
      const answer = await send(method, path, body);
      expect([path, answer.status]).toEqual([path, 403]);
      expect(await answer.json()).toEqual({
        faults: [
          {
            code: 'record.read-only',
            path: '',
            message:
              'This record is open read-only: nothing was entered or changed. To enter something, start Underside without --read-only.',
          },
        ],
      });
    }
    expect(await folderStamp(dir)).toEqual(before);
    await server.stop();
    expect(await folderStamp(dir)).toEqual(before);
  });

  it('opens by itself beside a program that works in the folder, as it stood then, and neither disturbs the other', async () => {
    const first = await startServer();
    onTestFinished(() => first.stop());
    const enter = (act: unknown) =>
      fetch(`${first.address}api/pieces/one/events`, {
        method: 'POST',
        headers: mine,
        body: JSON.stringify({ events: [act] }),
      });
    expect((await enter(opening('one'))).status).toBe(200);
    const second = await startServer(first.dataDir);
    onTestFinished(() => second.stop());
    const { readOnly } = (await (await fetch(`${second.address}api/record`)).json()) as {
      readOnly: { code: string; words: string };
    };
    expect(readOnly.code).toBe('in-use');
    expect(readOnly.words).toMatch(
      new RegExp(`^Another Underside at ${first.address} has this record open\\. You see it as it stood at `),
    );
    expect((await enter(finding('one', 'a', 'splat'))).status).toBe(200);
    const count = async (address: string) =>
      ((await (await fetch(`${address}api/record`)).json()) as { count: number }).count;
    expect([await count(first.address), await count(second.address)]).toEqual([2, 1]);
    await second.stop();
    expect((await enter(finding('one', 'b', 'splat'))).status).toBe(200);
  });

  it('is started twice on one port, as a person does who forgot the first: told where that one answers', async () => {
    const first = await startServer();
    onTestFinished(() => first.stop());
    const port = new URL(first.address).port;
    const { code, printed } = await runStart('--data', first.dataDir, '--port', port);
    expect(code).toBe(1);
    expect(printed).toContain(`already running on the folder ${first.dataDir} at ${first.address}`);
  });

  it('reads a record of a newer program when asked, and says so', async () => {
    const { dir } = await copiedRecord();
    const database = openSqlite(join(dir, 'record.db'));
    database.pragma('user_version = 7');
    database.pragma('journal_mode = DELETE');
    database.close();
    expect(() => openFolder(dir, { programVersion: '', readOnly: false, now: new Date() })).toThrow(
      /newer Underside .* or look at this one with --read-only\.$/,
    );
    const before = await folderStamp(dir);
    const opened = look(dir);
    expect(opened.readOnly?.words).toContain(
      'written by a newer Underside: what only that program knows is missing',
    );
    expect(opened.log.ofPiece('one')).toHaveLength(6);
    opened.close();
    expect(await folderStamp(dir)).toEqual(before);
    const changed = openSqlite(join(dir, 'record.db'));
    changed.exec('ALTER TABLE events RENAME COLUMN body TO words');
    changed.close();
    expect(() => look(dir)).toThrow(
      /newer Underside .*: this one can’t read it: start that newer program\.$/,
    );
  });

  it('says in one sentence that there is nothing to look at, or that the file is no record', async () => {
    const dir = await temporaryFolder();
    expect(() => look(dir)).toThrow(
      /^There is no record in .* name the folder that holds record\.db with --data/,
    );
    expect(await readdir(dir)).toEqual([]);
    await writeFile(join(dir, 'record.db'), 'Dear Sir. '.repeat(200));
    expect(() => look(dir)).toThrow(/is not a record of Underside, or is damaged/);
    expect(await readdir(dir)).toEqual(['record.db']);
  });

  it('removes what a killed program left of its copy, and no other', async () => {
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    const [left, held] = [pid, process.pid].map((one) => join(tmpdir(), `underside-look-${one}-test`));
    for (const folder of [left, held]) await mkdir(String(folder));
    look((await copiedRecord()).dir).close();
    expect([left, held].map((folder) => existsSync(String(folder)))).toEqual([false, true]);
    await rm(String(held), { recursive: true });
  });
});

describe.skipIf(process.platform === 'win32')('a folder that can’t be written', () => {
  it('is opened to be looked at by itself', async () => {
    const made = await pieceRecord();
    made.enter(opening('one'));
    await made.photograph('one', 'p1');
    made.close();
    await lock(made.dir);
    onTestFinished(() => unlock(made.dir));
    const before = await folderStamp(made.dir);
    const said = await startAsAnother(made.dir);
    expect(said).toMatchObject({
      ok: true,
      record: { count: 2, readOnly: { code: 'not-writable' } },
      view: 200,
      written: 403,
    });
    expect(await folderStamp(made.dir)).toEqual(before);
  });
});

const builtServer = new URL('../../dist/server.js', import.meta.url).href;
const dist = fileURLToPath(new URL('../../dist', import.meta.url));

/** Starts the built program as a user who is not root, for whom rights are no rights. */
function startAsAnother(dataDir: string): Promise<unknown> {
  const script = `
    const { startServer } = await import(${JSON.stringify(builtServer)});
    const started = await startServer({ dataDir: ${JSON.stringify(dataDir)}, port: 0, distDir: ${JSON.stringify(dist)} });
    if (started.ok) {
      const get = (path) => fetch(started.address + path);
      const { piece } = await (await get('api/pieces/one')).json();
      const view = await get('api/photos/' + piece.photos.p1.sha256 + '/view');
      const written = await fetch(started.address + 'api/pieces/one/events', { method: 'POST', headers: { 'x-underside': '1' }, body: '{}' });
      console.log(JSON.stringify({ ok: true, record: await (await get('api/record')).json(), view: view.status, written: written.status }));
      await started.close();
    } else console.log(JSON.stringify(started));
    process.exit(0);`;
  const as = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], { cwd: tmpdir(), ...as });
  let [printed, wrong] = ['', ''];
  child.stdout.on('data', (chunk) => {
    printed += chunk;
  });
  child.stderr.on('data', (chunk) => {
    wrong += chunk;
  });
  return new Promise((resolve, reject) =>
    child.once('close', () => {
      try {
        resolve(JSON.parse(printed));
      } catch {
        reject(new Error(`${printed}\n${wrong}`));
      }
    }),
  );
}

async function each(dir: string, work: (path: string, isFolder: boolean) => Promise<void>): Promise<void> {
  for (const entry of await readdir(dir, { withFileTypes: true })) {
    const path = join(dir, entry.name);
    if (entry.isDirectory()) await each(path, work);
    await work(path, entry.isDirectory());
  }
}

async function lock(dir: string): Promise<void> {
  const take = async (path: string, isFolder: boolean) => {
    if (process.getuid?.() === 0) await chown(path, 65534, 65534);
    await chmod(path, isFolder ? 0o555 : 0o444);
  };
  await each(dir, take);
  await take(dir, true);
}

async function unlock(dir: string): Promise<void> {
  await chmod(dir, 0o755);
  await each(dir, (path, isFolder) => chmod(path, isFolder ? 0o755 : 0o644));
}

/** Waits for a job to be done; gives back its id. */
async function ended(get: (path: string) => Promise<Response>, begun: Response): Promise<string> {
  expect(begun.status).toBe(202);
  const { job } = (await begun.json()) as { job: string };
  for (;;) {
    const { state, message } = (await (await get(`api/jobs/${job}`)).json()) as Record<string, string>;
    if (state === 'done') return job;
    if (state === 'failed') throw new Error(message);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
