import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { openOwnKnowledge } from '../../src/record/ownKnowledge.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';
import { act, finding, opening } from '../kits/drafts.ts';
import { gradient, sha256 } from '../kits/pictures.ts';
import { photoOf } from '../kits/recordFolder.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { testApp } from '../kits/testApp.ts';

describe('a piece with a bad act', () => {
  it.each([
    ['that is no JSON of an act', `'{}'`],
    ['that comes to no piece', `replace(body, '"present"', '7')`],
    ['whose changes are none', `replace(body, '"changes":[', '"changed":[')`],
  ])('%s: closes nothing else, and is told plainly', async (_what, to) => {
    const dir = await temporaryFolder();
    const first = createStore(sqliteLog(join(dir, 'record.db')));
    first.append([opening('good'), opening('bad')]);
    first.append([finding('bad', 'a', 'splat'), finding('good', 'a', 'splat')]);
    first.close();
    const database = openSqlite(join(dir, 'record.db'));
    database.exec('DROP TRIGGER events_stay');
    database.exec(`UPDATE events SET body = ${to} WHERE position = 3`);
    database.close();
    const store = createStore(sqliteLog(join(dir, 'record.db')));
    onTestFinished(() => store.close());
    const { get, post, faults } = await testApp({ parts: { store } });
    const list = (await (await get('/api/pieces')).json()) as { pieces: { id: string }[]; damaged: object[] };
    expect(list.pieces.map((one) => one.id)).toEqual(['good']);
    expect(list.damaged).toEqual([
      {
        id: 'bad',
        message: expect.stringMatching(/^The piece “bad” can’t be shown: .* npx underside verify .*\.$/),
      },
    ]);
    for (const path of ['bad', 'bad/opinion.pdf']) {
      const answer = await get(`/api/pieces/${path}`);
      expect(answer.status).toBe(422);
      expect(await answer.json()).toMatchObject({ faults: [{ code: 'record.piece-damaged' }] });
    }
    expect((await post('/api/pieces/bad/events', { events: [finding('bad', 'b', 'splat')] })).status).toBe(
      422,
    );
    expect((await post('/api/pieces/good/events', { events: [finding('good', 'b', 'splat')] })).status).toBe(
      200,
    );
    expect(faults).toEqual([]);
  });
});

describe('a file with a page that can’t be read', () => {
  it('is told in a sentence by every page and at the terminal not at all, and what is handed in is asked for again', async () => {
    const dir = await temporaryFolder();
    const file = join(dir, 'record.db');
    const first = createStore(sqliteLog(file));
    first.append([opening('one')]);
    for (let n = 0; n < 60; n++) first.append([finding('one', `sign-${n}`, 'splat')]);
    first.close();
    const database = openSqlite(file);
    const roots = database
      .prepare<{ page: number }>(
        "SELECT rootpage AS page FROM sqlite_schema WHERE tbl_name = 'events' AND rootpage > 0",
      )
      .all();
    database.close();
    const bytes = await readFile(file);
    for (const { page } of roots) bytes.fill(0xff, (page - 1) * 4096, (page - 1) * 4096 + 8);
    await writeFile(file, bytes);
    const log = sqliteLog(file, { readOnly: true });
    onTestFinished(() => log.close());
    const { get, post, faults } = await testApp({ parts: { store: createStore(log) } });
    const plain = {
      faults: [
        {
          code: 'record.file-damaged',
          message: expect.stringMatching(/^The file .* underside verify .*restore\.$/),
        },
      ],
    };
    for (const path of ['pieces', 'record']) {
      const answer = await get(`/api/${path}`);
      expect([path, answer.status, await answer.json()]).toMatchObject([path, 422, plain]);
    }
    const handed = await post('/api/pieces/two/events', { events: [opening('two')] });
    expect([handed.status, await handed.json()]).toMatchObject([503, plain]);
    expect(faults).toEqual([]);
  });
});

describe('an act that names a photo', () => {
  it('is refused until the photo has come, and then taken', async () => {
    const { app, post } = await testApp();
    const bytes = await gradient(40, 30).jpeg().toBuffer();
    const photo = { ...photoOf('p1', bytes), widthPx: 40, heightPx: 30 };
    await post('/api/pieces/one/events', { events: [opening('one')] });
    const added = act('one', 'photo-added', [{ path: ['photos', 'p1'], to: photo }]);
    const early = await post('/api/pieces/one/events', { events: [added] });
    expect(early.status).toBe(422);
    expect(await early.json()).toMatchObject({ faults: [{ code: 'record.photo-not-here' }] });
    const sent = await app.request(`http://127.0.0.1:4717/api/photos/${sha256(bytes)}`, {
      method: 'PUT',
      headers: { 'x-underside': '1' },
      body: new Uint8Array(bytes),
    });
    expect(sent.status).toBe(200);
    expect((await post('/api/pieces/one/events', { events: [added] })).status).toBe(200);
  });
});

describe('a file of own entries with a slip', () => {
  it.each([
    ['a bracket left open', 'signs: [\nshops: []\n'],
    ['a text where a list belongs', 'signs: none\nshops: []\n'],
    ['an entry without an id', 'signs:\n  - name: x\n'],
    ['a misspelled heading', 'sings: []\nshops: []\n'],
    ['nothing in it', ''],
  ])('%s: is told, left as it is, and never counted as empty', async (_what, text) => {
    const dir = await temporaryFolder();
    await mkdir(join(dir, 'own'));
    const file = join(dir, 'own', 'own.yaml');
    await writeFile(file, text);
    const knowledge = compileKnowledge(soundKnowledge).knowledge as Knowledge;
    const own = openOwnKnowledge(join(dir, 'own'), { knowledge, files: () => soundKnowledge }, () => {});
    expect(own.list().fault).toMatch(/^Your own signs and shops can’t be read: .* start again\.$/);
    expect(Object.keys(own.knowledge().signs)).toEqual(Object.keys(knowledge.signs));
    expect(own.put('sign', { id: 'x' })).toMatchObject({
      ok: false,
      faults: [{ code: 'own.file-has-a-slip' }],
    });
    expect(own.undo().ok).toBe(false);
    expect(await readFile(file, 'utf8')).toBe(text);
  });
});
