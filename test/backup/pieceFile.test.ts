import { createWriteStream } from 'node:fs';
import { cp, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { describe, expect, it } from 'vitest';
import { ZipFile } from 'yazl';
import type { RecordedEvent } from '../../src/piece/event.ts';
import { hashEvent } from '../../src/record/chain.ts';
import { photoPaths } from '../../src/record/photoPaths.ts';
import { pieceManifestText, readPieceManifest } from '../../src/record/pieceFile/pieceFileManifest.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { act, finding, opening, step } from '../kits/drafts.ts';
import { sha256 } from '../kits/pictures.ts';
import { pieceRecord } from '../kits/pieceRecord.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { unzip } from '../kits/unzip.ts';

/** A record with one piece: acts of two devices, a photo, an undo and a redo, among acts on another piece. */
async function firstRecord() {
  const record = await pieceRecord();
  record.enter(opening('one'), opening('two'), finding('one', 'a', 'splat'), finding('two', 'a', 'splat'));
  record.enter(finding('one', 'b', 'splat', { device: 'laptop' }));
  const photo = await record.photograph('one', 'p1');
  record.store.undo('one', step());
  record.store.redo('one', step({ device: 'laptop' }));
  return { ...record, photo };
}

const codes = (outcome: { ok: boolean; faults?: { code: string }[] }) =>
  outcome.faults?.map(({ code }) => code);

/** A zip of our own making, from files; `sealed` gives it a list that fits them. */
async function zipOf(files: Map<string, Buffer>, sealed = true): Promise<string> {
  if (sealed) {
    const manifest = readPieceManifest(files.get('manifest.json')?.toString() ?? '');
    if (manifest === undefined) throw new Error('no manifest');
    const paths = [...files.keys()].filter((path) => path !== 'manifest.json');
    const list = paths.map((path) => {
      const bytes = files.get(path) ?? Buffer.alloc(0);
      return { path, sha256: sha256(bytes), bytes: bytes.length };
    });
    const acts = (files.get('acts.jsonl')?.toString() ?? '').trim().split('\n').length;
    files.set('manifest.json', Buffer.from(pieceManifestText({ ...manifest, acts, files: list })));
  }
  const zip = new ZipFile();
  for (const [path, bytes] of files) zip.addBuffer(bytes, path);
  zip.end();
  const to = join(await temporaryFolder(), 'made.zip');
  await pipeline(zip.outputStream, createWriteStream(to));
  return to;
}

/** The zip of a piece with its acts changed and everything else made to fit. */
async function withActs(file: string, change: (acts: RecordedEvent[]) => RecordedEvent[]): Promise<string> {
  const files = await unzip(file);
  const acts = (files.get('acts.jsonl')?.toString() ?? '')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as RecordedEvent);
  files.set(
    'acts.jsonl',
    Buffer.from(
      change(acts)
        .map((one) => `${JSON.stringify(one)}\n`)
        .join(''),
    ),
  );
  return zipOf(files);
}

describe('one piece as one file', () => {
  it('comes into another record act for act and photo for photo, with what each act was where it was made', async () => {
    const first = await firstRecord();
    const second = await pieceRecord();
    second.enter(opening('other', { device: 'tablet-1' }));
    const came = await second.bringIn(await first.takeOut('one'));
    expect(came).toMatchObject({
      ok: true,
      value: { piece: 'one', added: 6, known: 0, photos: 1, remarks: [] },
    });
    expect(second.store.piece('one')?.piece).toEqual(first.store.piece('one')?.piece);
    expect(second.store.piece('one')).toMatchObject({ canUndo: true, canRedo: false });
    const bytes = (dir: string) => readFile(photoPaths(dir).original(first.photo));
    expect(await bytes(second.dir)).toEqual(await bytes(first.dir));
    const [was, is] = [first.store.history('one'), second.store.history('one')];
    for (const [index, event] of is.entries()) {
      const { origin, ...rest } = event;
      expect(origin).toMatchObject({ record: first.store.recordId, hash: was[index]?.hash });
      expect(hashEvent({ ...rest, seq: origin?.seq ?? 0, before: origin?.before ?? '' })).toBe(
        was[index]?.hash,
      );
    }
    expect(await verifyRecord(second.dir)).toMatchObject({ ok: true, faults: [] });
  });

  it('is harmless twice, and brought back where it came from', async () => {
    const first = await firstRecord();
    const second = await pieceRecord();
    const file = await first.takeOut('one');
    await second.bringIn(file);
    expect(await second.bringIn(file)).toMatchObject({ ok: true, value: { added: 0, known: 6 } });
    expect(await first.bringIn(await second.takeOut('one'))).toMatchObject({
      ok: true,
      value: { added: 0, known: 6 },
    });
  });

  it('grows on one side and then on both, and is one piece again where other places were changed', async () => {
    const first = await firstRecord();
    const second = await pieceRecord();
    await second.bringIn(await first.takeOut('one'));
    second.enter(finding('one', 'c', 'splat', { device: 'other' }));
    expect(await first.bringIn(await second.takeOut('one'))).toMatchObject({
      ok: true,
      value: { added: 1, remarks: [] },
    });
    first.enter(finding('one', 'd', 'splat'));
    second.enter(finding('one', 'e', 'splat', { device: 'other' }));
    expect(await first.bringIn(await second.takeOut('one'))).toMatchObject({
      ok: true,
      value: { added: 1, known: 7 },
    });
    expect(await second.bringIn(await first.takeOut('one'))).toMatchObject({ ok: true, value: { added: 1 } });
    expect(second.store.piece('one')?.piece).toEqual(first.store.piece('one')?.piece);
    for (const { dir } of [first, second]) expect((await verifyRecord(dir)).faults).toEqual([]);
  });

  it('names the places that both changed, keeps them as they are, and comes in beside when asked', async () => {
    const first = await firstRecord();
    const second = await pieceRecord();
    await second.bringIn(await first.takeOut('one'));
    const change = (state: string) =>
      act('one', 'finding-recorded', [{ path: ['findings', 'a@splat', 'state'], to: state }]);
    first.enter(change('absent'));
    second.enter(change('could-not-tell'));
    const file = await second.takeOut('one');
    const before = first.store.history('one');
    const refused = await first.bringIn(file);
    expect(codes(refused)).toEqual(['adopt.both-changed']);
    expect(!refused.ok && refused.faults[0]?.message).toContain('findings a@splat state');
    expect(first.store.history('one')).toEqual(before);
    const beside = await first.bringIn(file, true);
    if (!beside.ok) throw new Error(JSON.stringify(beside.faults));
    expect(beside.value.added).toBe(7);
    const there = first.store.piece(beside.value.piece)?.piece;
    expect(there?.title).toBe('A chair (brought in beside)');
    expect(there?.findings['a@splat']?.state).toBe('could-not-tell');
    expect(await first.bringIn(file, true)).toMatchObject({ ok: true, value: { added: 0 } });
    expect((await verifyRecord(first.dir)).faults).toEqual([]);
  });

  it('tells a device whose chain went on in a record and in its copy', async () => {
    const first = await firstRecord();
    const copy = join(await temporaryFolder(), 'copy');
    first.close();
    await cp(first.dir, copy, { recursive: true });
    const [here, there] = [await pieceRecord(first.dir), await pieceRecord(copy)];
    here.enter(finding('two', 'here', 'splat'));
    there.enter(finding('one', 'there', 'splat'));
    const came = await here.bringIn(await there.takeOut('one'));
    expect(came).toMatchObject({
      ok: true,
      value: { added: 1, remarks: [expect.stringContaining('tablet-1')] },
    });
    expect((await verifyRecord(here.dir)).faults).toEqual([]);
  });

  it('has a page that shows it, with what people typed as text and nothing else', async () => {
    const record = await pieceRecord();
    const hostile = `<script>alert(1)</script>"><img src=x onerror='alert(2)'>`;
    record.enter(
      opening('one', {
        who: hostile,
        changes: [{ path: [], to: { id: 'one', form: 'side-chair', title: hostile } }],
      }),
    );
    await record.photograph('one', 'p1');
    record.enter(act('one', 'photo-described', [{ path: ['photos', 'p1', 'caption'], to: hostile }]));
    const files = await unzip(await record.takeOut('one'));
    const page = files.get('index.html')?.toString() ?? '';
    expect(page).toContain('&#60;script&#62;alert(1)');
    // Between the tags only: what stands within quotes is text.
    expect(page.replace(/"[^"]*"/g, '""')).not.toMatch(/<script|<img src=x|<[^>]+ on\w+=/i);
    expect(
      [...page.matchAll(/(?:src|href)="([^"]*)"/g)]
        .map((match) => match[1])
        .filter(
          (at) => !/^(photos\/[0-9a-f]{64}\.jpg|data:image\/svg\+xml;base64,.*|https:\/\/.*)$/.test(at ?? ''),
        ),
    ).toEqual([]);
    expect(
      [...files.keys()].some((name) => name.startsWith('photos/') && page.includes(`src="${name}"`)),
    ).toBe(true);
  });
});

describe('a file that is not what it was', () => {
  it('is refused at any changed byte of acts, photo, list or page', async () => {
    const first = await firstRecord();
    const files = await unzip(await first.takeOut('one'));
    for (const name of files.keys()) {
      const changed = new Map(files);
      const bytes = Buffer.from(files.get(name) ?? '');
      bytes[Math.floor(bytes.length / 2)] = (bytes[Math.floor(bytes.length / 2)] ?? 0) ^ 1;
      changed.set(name, bytes);
      const second = await pieceRecord();
      expect(codes(await second.bringIn(await zipOf(changed, false))), name).toEqual(['piece-file.damaged']);
      expect(second.store.pieces()).toEqual([]);
    }
  });

  it('is refused where an act was changed and all else made to fit', async () => {
    const first = await firstRecord();
    const file = await first.takeOut('one');
    const second = await pieceRecord();
    const rehash = (event: RecordedEvent) => ({ ...event, hash: hashEvent(event) });
    const tries: [string, (acts: RecordedEvent[]) => RecordedEvent[]][] = [
      ['adopt.act-changed', (acts) => acts.map((one, n) => (n === 1 ? { ...one, who: 'another' } : one))],
      [
        'adopt.origin-differs',
        (acts) =>
          acts.map((one, n) =>
            n === 1
              ? rehash({ ...one, origin: { record: 'r', seq: 1, before: one.before, hash: one.hash } })
              : one,
          ),
      ],
      [
        'adopt.before-differs',
        (acts) =>
          acts.map((one, n) =>
            n === 1
              ? rehash({ ...one, changes: one.changes.map((each) => ({ ...each, from: 'something' })) })
              : one,
          ),
      ],
      ['adopt.undo-differs', (acts) => acts.filter(({ kind }) => kind !== 'photo-added')],
      ['adopt.not-opened', (acts) => acts.slice(1)],
      ['adopt.twice', (acts) => [...acts, acts[1] as RecordedEvent]],
      ['adopt.not-an-act', (acts) => acts.map((one) => rehash({ ...one, piece: 'two' }))],
      [
        'adopt.undo-differs',
        (acts) =>
          acts.map((one) =>
            one.kind === 'undo'
              ? rehash({ ...one, changes: [{ path: ['title'], to: 'Mine', from: 'A chair' }] })
              : one,
          ),
      ],
      [
        'record.fixed-place',
        (acts) =>
          acts.map((one, n) =>
            n === 1 ? rehash({ ...one, changes: [{ path: ['example'], to: true }] }) : one,
          ),
      ],
      [
        'record.forbidden-key',
        (acts) =>
          acts.map((one, n) =>
            n === 1 ? rehash({ ...one, changes: [{ path: ['findings', '__proto__'], to: {} }] }) : one,
          ),
      ],
    ];
    for (const [code, change] of tries) {
      expect(codes(await second.bringIn(await withActs(file, change))), code).toEqual([code]);
      expect(second.store.pieces()).toEqual([]);
    }
    await second.bringIn(file);
    const other = (acts: RecordedEvent[]) =>
      acts.map((one, n) => (n === 0 ? rehash({ ...one, who: 'another' }) : one));
    expect(codes(await second.bringIn(await withActs(file, other)))).toEqual(['adopt.other-act']);
  });

  it('is refused where a name leads elsewhere, a file is no part of a piece, or its sizes are a trap', async () => {
    const first = await firstRecord();
    const files = await unzip(await first.takeOut('one'));
    const second = await pieceRecord();
    const refused = async (name: string, bytes: Buffer, sealed = false) => {
      const file = await zipOf(new Map([...files, [name, bytes]]), sealed);
      expect(codes(await second.bringIn(file)), name).toEqual(['piece-file.damaged']);
    };
    await refused('notes.exe', Buffer.from('MZ'));
    await refused('photos/../../record.db', Buffer.from('')).catch((error) =>
      expect(String(error)).toContain('relative path'),
    );
    const bomb = join(await temporaryFolder(), 'bomb.zip');
    const bytes = Buffer.alloc(160_000_000);
    await writeFile(bomb, await readFile(await zipOf(new Map([['acts.jsonl', bytes]]), false)));
    const trap = await second.bringIn(bomb);
    expect(!trap.ok && trap.faults[0]?.message).toContain('“acts.jsonl” is larger than it may be');
    await writeFile(bomb, 'not a zip at all');
    expect(codes(await second.bringIn(bomb))).toEqual(['piece-file.damaged']);
    expect((await readdir(join(second.dir, 'incoming'))).length).toBe(0);
  });

  it('is refused where a photo is no picture, though its hash fits', async () => {
    const first = await firstRecord();
    const files = await unzip(await first.takeOut('one'));
    const fake = Buffer.from('no picture');
    files.set(`photos/${sha256(fake)}.jpg`, fake);
    const second = await pieceRecord();
    expect(codes(await second.bringIn(await zipOf(files)))).toEqual(['photo.not-a-photo']);
    expect(second.store.pieces()).toEqual([]);
  });
});
