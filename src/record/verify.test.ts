import { readdirSync } from 'node:fs';
import { mkdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { act, finding, opening } from '../../test/kits/drafts.ts';
import { handSigned } from '../../test/kits/handSigned.ts';
import { photoOf, put } from '../../test/kits/recordFolder.ts';
import { temporaryFolder } from '../../test/kits/temporaryFolder.ts';
import type { Json, RecordedEvent } from '../piece/event.ts';
import { chainStart, type Head, hashEvent, linkEvent } from './chain.ts';
import { recordFile } from './openDataFolder.ts';
import { photoPaths } from './photoPaths.ts';
import { recordHead } from './recordHead.ts';
import { sqliteLog } from './sqliteLog.ts';
import { createStore } from './store.ts';
import { verifyRecord } from './verify.ts';

const example: Json = { id: 'example', form: 'side-chair', example: true };
const photo = Buffer.from('bytes of a photo');
const { sha256 } = photoOf('p1', photo);

/** A record of two devices, a photo and an example put away. */
async function soundRecord() {
  const dir = await temporaryFolder();
  const log = sqliteLog(recordFile(dir));
  const store = createStore(log, new Map([['example', example]]));
  const handed = store.append([
    opening('one'),
    finding('one', 'a', 'splat', { device: 'laptop' }),
    act('one', 'photo-added', [{ path: ['photos', 'p1'], to: photoOf('p1', photo) }]),
    act('example', 'piece-put-away', [{ path: ['putAway'], to: true }], { device: 'laptop' }),
  ]);
  expect(handed.ok).toBe(true);
  await put(photoPaths(dir).original(sha256), photo);
  const acts = ['one', 'example'].flatMap((piece) => log.ofPiece(piece)).map(({ event }) => event);
  const { recordId } = store;
  log.close();
  return { dir, acts, recordId };
}

/** A record of acts as they are given, whatever they say of themselves. */
async function recordOf(...events: RecordedEvent[]): Promise<string> {
  const dir = await temporaryFolder();
  const log = sqliteLog(recordFile(dir));
  log.append(events);
  log.close();
  return dir;
}

function chained(...drafts: ReturnType<typeof act>[]): RecordedEvent[] {
  const heads = new Map<string, Head>();
  return drafts.map((draft) => {
    const event = linkEvent(draft, heads.get(draft.device) ?? chainStart);
    heads.set(draft.device, event);
    return event;
  });
}

/** Copies of a record that this process put aside to look at, and did not take away. */
const leftBehind = () =>
  readdirSync(tmpdir()).filter((name) => name.startsWith(`underside-look-${process.pid}-`));

const faultsOf = async (dir: string) => (await verifyRecord(dir)).faults;

describe('a record that is as it was written', () => {
  it('is told with all that it holds', async () => {
    const { dir, acts, recordId } = await soundRecord();
    const [first, second, third, fourth] = acts as [
      RecordedEvent,
      RecordedEvent,
      RecordedEvent,
      RecordedEvent,
    ];
    expect(await verifyRecord(dir)).toEqual({
      ok: true,
      recordId,
      head: recordHead([third, fourth], 4),
      events: 4,
      devices: [
        { device: first.device, events: 2, hash: third.hash },
        { device: second.device, events: 2, hash: fourth.hash },
      ],
      pieces: 2,
      photos: 1,
      revisions: 0,
      faults: [],
      remarks: [],
    });
    expect(leftBehind()).toEqual([]);
  });

  it('counts its signed revisions, and tells what is wrong with them', async () => {
    const { dir } = await handSigned();
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, revisions: 1, remarks: [] });
    await rm(join(dir, 'issued'), { recursive: true });
    expect(await verifyRecord(dir)).toMatchObject({
      ok: false,
      revisions: 1,
      faults: [{ path: 'issued/one/1' }],
    });
    const elsewhere = await handSigned({}, 'another record');
    const { ok, remarks } = await verifyRecord(elsewhere.dir);
    expect(ok).toBe(true);
    expect(remarks).toEqual([expect.stringContaining('was signed in another record')]);
  });
});

describe('no record', () => {
  const nothing = {
    ok: false,
    recordId: '',
    head: recordHead([], 0),
    events: 0,
    devices: [],
    pieces: 0,
    photos: 0,
    revisions: 0,
    remarks: [],
  };

  it('is said where there is none', async () => {
    const dir = await temporaryFolder();
    expect(await verifyRecord(dir)).toEqual({
      ...nothing,
      faults: [{ code: 'verify.no-record', path: dir, message: `There is no record in ${dir}.` }],
    });
  });

  it('is said of a file that is another’s', async () => {
    const dir = await temporaryFolder();
    const file = recordFile(dir);
    await writeFile(file, 'a letter to the editor, long enough to be looked at as a file of something');
    expect(await verifyRecord(dir)).toEqual({
      ...nothing,
      faults: [
        {
          code: 'record.not-a-record',
          path: file,
          message: `${file} is not a record of Underside, or is damaged: put back a copy of it.`,
        },
      ],
    });
  });

  it('can be read where its place is taken by a folder', async () => {
    const dir = await temporaryFolder();
    await mkdir(recordFile(dir));
    expect(await faultsOf(dir)).toEqual([
      {
        code: 'verify.unreadable',
        path: recordFile(dir),
        message: expect.stringMatching(/^The record .+ can’t be read \(.+\): mend its permissions/),
      },
    ]);
  });

  it('can be read to its end where the file was cut short', async () => {
    const { dir } = await soundRecord();
    const file = recordFile(dir);
    const bytes = await readFile(file);
    await writeFile(file, bytes.subarray(0, bytes.length / 4));
    const [fault] = await faultsOf(dir);
    expect(leftBehind()).toEqual([]);
    expect(fault).toMatchObject({ code: 'verify.file-damaged', path: file });
    expect(fault?.message).toMatch(
      /^The file of the record is damaged and can’t be read to its end \(.+\): put back a copy of it\.$/,
    );
  });
});

describe('the acts of a record', () => {
  const place = (position: number, { id }: RecordedEvent) => `event ${position} (${id})`;

  it('are told where a chain breaks, and where an act is not as it was', async () => {
    const [first, second, third] = chained(
      opening('one'),
      finding('one', 'a', 'splat'),
      finding('one', 'b', 'splat'),
    ) as [RecordedEvent, RecordedEvent, RecordedEvent];
    const broken = (event: RecordedEvent) => ({
      code: 'verify.chain-broken',
      path: place(2, event),
      message: 'The chain of tablet-1 breaks here: an act before this one was removed, added or changed.',
    });
    // The one between is gone.
    expect(await faultsOf(await recordOf(first, third))).toEqual([broken(third)]);
    // Its number goes on, and what it hangs on is another; then the other way around.
    const sealed = (event: RecordedEvent) => ({ ...event, hash: hashEvent(event) });
    const otherBefore = sealed({ ...second, before: 'f'.repeat(64) });
    expect(await faultsOf(await recordOf(first, otherBefore))).toEqual([broken(otherBefore)]);
    const otherNumber = sealed({ ...second, seq: 5 });
    expect(await faultsOf(await recordOf(first, otherNumber))).toEqual([broken(otherNumber)]);
    const changed = { ...second, who: 'Somebody else' };
    expect(await faultsOf(await recordOf(first, changed))).toEqual([
      {
        code: 'verify.act-changed',
        path: place(2, second),
        message: 'This act is not as it was recorded: its hash differs.',
      },
    ]);
  });

  it('are told where one lies about what stood there before', async () => {
    const [first, second] = chained(
      opening('one'),
      act('one', 'piece-described', [{ path: ['title'], to: 'B', from: 'Another chair' }]),
    ) as [RecordedEvent, RecordedEvent];
    expect(await faultsOf(await recordOf(first, second))).toEqual([
      {
        code: 'verify.before-differs',
        path: place(2, second),
        message: 'What this act says stood there before is not what stood there.',
      },
    ]);
  });

  it('are told where those of a piece come to none', async () => {
    const dir = await recordOf(
      ...chained(act('one', 'piece-opened', [{ path: [], to: { id: 'one', form: 7 } }])),
    );
    expect(await faultsOf(dir)).toEqual([
      {
        code: 'verify.not-a-piece',
        path: 'one',
        message: 'The acts on one do not come to a piece this program can read.',
      },
    ]);
  });
});

describe('a head that was noted', () => {
  const notedIn = async (hash: string, count?: number) => {
    const { dir, acts } = await soundRecord();
    const noted = count === undefined ? { hash } : { hash, count };
    return { faults: (await verifyRecord(dir, noted)).faults, acts };
  };
  const otherHead = (message: string) => [{ code: 'verify.other-head', path: 'record.db', message }];
  const never = (after = '') =>
    otherHead(
      `The record never had the head that was noted${after}: its acts were written anew, or this is another record.`,
    );

  it('holds after as many acts as it was noted with, or after any', async () => {
    const { dir, acts } = await soundRecord();
    const [first, second, third] = acts as [RecordedEvent, RecordedEvent, RecordedEvent];
    const against = async (hash: string, count?: number) =>
      (await verifyRecord(dir, count === undefined ? { hash } : { hash, count })).faults;
    const one = recordHead([first], 1).hash;
    const three = recordHead([second, third], 3).hash;
    const none = recordHead([], 0).hash;
    expect(await against(one, 1)).toEqual([]);
    expect(await against(three, 3)).toEqual([]);
    expect(await against(three)).toEqual([]);
    expect(await against(none, 0)).toEqual([]);
    expect(await against(none)).toEqual([]);
    expect(await against(one, 3)).toEqual(never(' after 3 acts'));
    expect(await against(none, 1)).toEqual(never(' after 1 act'));
    expect(await against(one, 0)).toEqual(never(' after 0 acts'));
    expect(await against('f'.repeat(64), 4)).toEqual(never(' after 4 acts'));
  });

  it('was never this record’s', async () => {
    expect((await notedIn('f'.repeat(64))).faults).toEqual(never());
  });

  it('was noted after more acts than there are', async () => {
    expect((await notedIn('f'.repeat(64), 5)).faults).toEqual(
      otherHead(
        'The head was noted after 5 acts, and the record holds 4: acts were cut off, or this is another record.',
      ),
    );
  });
});

describe('the photos of a record', () => {
  it('are told where one is missing, changed, or named by nobody', async () => {
    const { dir } = await soundRecord();
    const file = photoPaths(dir).original(sha256);
    await writeFile(file, 'retouched');
    expect(await faultsOf(dir)).toEqual([
      {
        code: 'verify.photo-changed',
        path: file,
        message: `The photo ${sha256} is not the one that was kept: its bytes differ.`,
      },
    ]);
    await rm(file);
    expect(await verifyRecord(dir)).toMatchObject({
      photos: 0,
      faults: [
        {
          code: 'verify.photo-missing',
          path: 'one',
          message: `The photo ${sha256} of one is not there.`,
        },
      ],
    });
    const sent = await soundRecord();
    const other = photoOf('p2', Buffer.from('another')).sha256;
    await put(photoPaths(sent.dir).original(other), 'another');
    expect(await verifyRecord(sent.dir)).toMatchObject({
      ok: true,
      photos: 2,
      faults: [],
      remarks: [`No piece names the photo ${other}: it was sent, and its act never came.`],
    });
  });

  it.skipIf(process.platform !== 'linux')('are told where one can’t be read', async () => {
    const { dir } = await soundRecord();
    const file = photoPaths(dir).original('unread');
    await mkdir(dirname(file), { recursive: true });
    // A file that is there and refuses to be read from its beginning.
    await symlink('/proc/self/mem', file);
    expect(await faultsOf(dir)).toEqual([
      {
        code: 'verify.photo-unreadable',
        path: file,
        message: expect.stringMatching(/^The photo unread can’t be read \(EIO.*\)\.$/),
      },
    ]);
  });
});
