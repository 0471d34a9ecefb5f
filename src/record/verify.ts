import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import type { Fault } from '../ground/fault.ts';
import { counted } from '../ground/words.ts';
import type { RecordedEvent } from '../piece/event.ts';
import { photosNamed } from '../piece/photosNamed.ts';
import { piece as pieceSchema } from '../piece/piece.ts';
import { canonicalJson } from './canonicalJson.ts';
import { chainStart, type Head, hashEvent } from './chain.ts';
import { CannotOpen } from './fault.ts';
import { recordFile } from './openDataFolder.ts';
import { photoPaths } from './photoPaths.ts';
import { originalFiles } from './photos.ts';
import { newState, stepsFrom } from './pieceState.ts';
import { type RecordAside, recordAside } from './readOnly/recordAside.ts';
import { type DeviceHead, type RecordHead, recordHead } from './recordHead.ts';
import { openSqlite } from './sqlite/openSqlite.ts';
import { SqliteFault } from './sqlite/sqliteFault.ts';
import { checkIssued } from './verifyIssued.ts';
import { checkOrigins } from './verifyOrigins.ts';
import { readStore, type StoreContents } from './verifyStore.ts';

/** What a check of a record found. `faults` is empty when all holds; `remarks` are harmless. */
export type Verification = {
  ok: boolean;
  /** Empty for a record of the first version, and where it can't be read. */
  recordId: string;
  head: RecordHead;
  events: number;
  devices: { device: string; events: number; hash: string }[];
  pieces: number;
  photos: number;
  /** Signed revisions, with all their files. */
  revisions: number;
  faults: Fault[];
  remarks: string[];
};

/** A head that was noted before: in an opinion, with a copy, or by hand. */
export type NotedHead = { hash: string; count?: number };

/**
 * Whether a record is as it was written: the file and its tables, every device's chain of hashes, what each act says
 * stood there before, what an act that was brought in says of the record it came from, every piece, and the bytes of every photo. Changes nothing in the folder, which may be
 * write-protected, and may run beside the program. A
 * file that is damaged comes out as faults, never as an error.
 *
 * A chain shows any act changed, removed from the middle, or put in. That the newest acts were cut off, or the whole
 * chain was written anew, shows only against a head that was noted.
 *
 * @param dir    the data folder
 * @param noted  a head this record must have had, after `count` acts or at any time
 */
export async function verifyRecord(dir: string, noted?: NotedHead): Promise<Verification> {
  const found: Verification = {
    ok: true,
    recordId: '',
    head: recordHead([], 0),
    events: 0,
    devices: [],
    pieces: 0,
    photos: 0,
    revisions: 0,
    faults: [],
    remarks: [],
  };
  if (!existsSync(recordFile(dir)))
    return withFault(found, 'verify.no-record', dir, `There is no record in ${dir}.`);
  const store = readFile(dir);
  found.faults.push(...store.faults);
  found.recordId = store.recordId;
  checkEvents(store.acts, found);
  if (noted !== undefined) checkNoted(store.acts, noted, found);
  const origins = checkOrigins(store.acts);
  found.faults.push(...origins.faults);
  found.remarks.push(...origins.remarks);
  const issued = await checkIssued(dir, store.acts, store.recordId);
  found.revisions = issued.revisions;
  found.faults.push(...issued.faults);
  found.remarks.push(...issued.remarks);
  await checkPhotos(dir, photosOf(store.acts), found);
  return { ...found, ok: found.faults.length === 0 };
}

function readFile(dir: string): StoreContents {
  const file = recordFile(dir);
  const nothing = (code: string, message: string) => ({
    recordId: '',
    acts: [],
    faults: [{ code, path: file, message }],
  });
  let aside: RecordAside | undefined;
  try {
    aside = recordAside(dir);
    const database = openSqlite(aside.file, { readOnly: true });
    try {
      return readStore(database);
    } finally {
      database.close();
    }
  } catch (error) {
    if (error instanceof CannotOpen && error.code === 'record.cannot-look')
      return nothing('verify.unreadable', error.message);
    if (!(error instanceof SqliteFault)) throw error;
    if (error.code === 'SQLITE_NOTADB')
      return nothing(
        'record.not-a-record',
        `${file} is not a record of Underside, or is damaged: put back a copy of it.`,
      );
    if (['SQLITE_BUSY', 'SQLITE_CANTOPEN', 'SQLITE_READONLY'].includes(error.code))
      return nothing('verify.unreadable', `${file} could not be read (${error.message}): try again.`);
    return nothing(
      'verify.file-damaged',
      `The file of the record is damaged and can’t be read to its end (${error.message}): put back a copy of it.`,
    );
  } finally {
    aside?.remove();
  }
}

function withFault(found: Verification, code: string, path: string, message: string): Verification {
  return { ...found, ok: false, faults: [...found.faults, { code, path, message }] };
}

type Acts = StoreContents['acts'];

/** Checks chains and pieces. */
function checkEvents(acts: Acts, found: Verification): void {
  const ofPiece = new Map<string, Acts>();
  for (const act of acts) {
    const others = ofPiece.get(act.event.piece);
    if (others === undefined) ofPiece.set(act.event.piece, [act]);
    else others.push(act);
  }
  for (const [id, events] of ofPiece) checkPiece(id, events, found);
  found.events = acts.length;
  found.pieces = ofPiece.size;
  checkChains(acts, found);
  found.head = headAfter(acts);
}

/** The photos that acts name, or ever named, each with a piece that does. */
function photosOf(acts: Acts): Map<string, string> {
  return new Map(acts.flatMap(({ event }) => photosNamed(event).map((sha) => [sha, event.piece] as const)));
}

function headAfter(acts: Acts): RecordHead {
  const heads = new Map<string, DeviceHead>(acts.map(({ event }) => [event.device, event]));
  return recordHead([...heads.values()], acts.length);
}

/** The head after the number of acts that was noted with it, or after any number where none was. */
function checkNoted(acts: Acts, { hash, count }: NotedHead, found: Verification): void {
  const heads = new Map<string, DeviceHead>();
  const asked = (acts: number) => count === undefined || count === acts;
  let met = asked(0) && recordHead([], 0).hash === hash;
  for (const [index, { event }] of acts.entries()) {
    heads.set(event.device, event);
    met ||= asked(index + 1) && recordHead([...heads.values()], index + 1).hash === hash;
  }
  if (met) return;
  const after = count === undefined ? '' : ` after ${counted(count, 'act')}`;
  found.faults.push({
    code: 'verify.other-head',
    path: 'record.db',
    message:
      count !== undefined && acts.length < count
        ? `The head was noted after ${count} acts, and the record holds ${acts.length}: acts were cut off, or this is another record.`
        : `The record never had the head that was noted${after}: its acts were written anew, or this is another record.`,
  });
}

function checkChains(all: { position: number; event: RecordedEvent }[], found: Verification): void {
  const heads = new Map<string, Head>();
  for (const { position, event } of all) {
    const head = heads.get(event.device) ?? chainStart;
    const path = `event ${position} (${event.id})`;
    if (event.seq !== head.seq + 1 || event.before !== head.hash) {
      found.faults.push({
        code: 'verify.chain-broken',
        path,
        message: `The chain of ${event.device} breaks here: an act before this one was removed, added or changed.`,
      });
    }
    if (hashEvent(event) !== event.hash) {
      found.faults.push({
        code: 'verify.act-changed',
        path,
        message: 'This act is not as it was recorded: its hash differs.',
      });
    }
    heads.set(event.device, event);
  }
  found.devices = [...heads].map(([device, head]) => ({ device, events: head.seq, hash: head.hash }));
}

/** Each act must say what truly stood there before it, and all of them must come to a piece. */
function checkPiece(
  id: string,
  events: { position: number; event: RecordedEvent }[],
  found: Verification,
): void {
  const opened = events[0]?.event.kind === 'piece-opened';
  const steps = stepsFrom(newState());
  for (const { position, event } of events) {
    const told = canonicalJson(event.changes);
    if (canonicalJson(steps.make(event.changes)) !== told && opened) {
      found.faults.push({
        code: 'verify.before-differs',
        path: `event ${position} (${event.id})`,
        message: 'What this act says stood there before is not what stood there.',
      });
    }
    steps.count(event, position);
  }
  if (opened && !pieceSchema.safeParse(steps.state().document).success) {
    found.faults.push({
      code: 'verify.not-a-piece',
      path: id,
      message: `The acts on ${id} do not come to a piece this program can read.`,
    });
  }
}

async function checkPhotos(dir: string, named: Map<string, string>, found: Verification): Promise<void> {
  const paths = photoPaths(dir);
  const files = await originalFiles(dir);
  found.photos = files.length;
  for (const { name, path } of files) {
    const sha = await hashFile(path).catch((error: Error) => error);
    if (sha instanceof Error)
      found.faults.push({
        code: 'verify.photo-unreadable',
        path,
        message: `The photo ${name} can’t be read (${sha.message}).`,
      });
    else if (sha !== name)
      found.faults.push({
        code: 'verify.photo-changed',
        path,
        message: `The photo ${name} is not the one that was kept: its bytes differ.`,
      });
    else if (!named.has(name))
      found.remarks.push(`No piece names the photo ${name}: it was sent, and its act never came.`);
  }
  for (const [sha, piece] of named) {
    if (!existsSync(paths.original(sha)))
      found.faults.push({
        code: 'verify.photo-missing',
        path: piece,
        message: `The photo ${sha} of ${piece} is not there.`,
      });
  }
}

async function hashFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk);
  return hash.digest('hex');
}
