import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import type { Fault } from '../calculations/define.ts';
import type { RecordedEvent } from '../piece/event.ts';
import { piece as pieceSchema } from '../piece/piece.ts';
import { canonicalJson } from './canonicalJson.ts';
import { chainStart, type Head, hashEvent } from './chain.ts';
import type { EventLog } from './eventLog.ts';
import { CannotOpen } from './fault.ts';
import { recordFile } from './openDataFolder.ts';
import { photoPaths } from './photoPaths.ts';
import { originalFiles } from './photos.ts';
import { newState, stepsFrom } from './pieceState.ts';
import { sqliteLog } from './sqliteLog.ts';
import { checkIssued, type PlacedAct } from './verifyIssued.ts';

/** What a check of a record found. `faults` is empty when all holds; `remarks` are harmless. */
export type Verification = {
  ok: boolean;
  events: number;
  devices: { device: string; events: number; hash: string }[];
  pieces: number;
  photos: number;
  /** Signed revisions, with all their files. */
  revisions: number;
  faults: Fault[];
  remarks: string[];
};

/**
 * Whether a record is as it was written: every device's chain of hashes, what each act says stood there before,
 * every piece, and the bytes of every photo. Changes nothing, and may run beside the program.
 *
 * A chain shows any act changed, removed from the middle, or put in. It does not show that the newest acts of a device
 * were cut off: note the last hash of each device, which is in the answer, to be able to show that later.
 *
 * @param dir  the data folder
 */
export async function verifyRecord(dir: string): Promise<Verification> {
  const found: Verification = {
    ok: true,
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
  let log: EventLog;
  try {
    log = sqliteLog(recordFile(dir), true);
  } catch (error) {
    if (!(error instanceof CannotOpen)) throw error;
    return withFault(found, error.code, dir, error.message);
  }
  try {
    const { named, acts } = checkEvents(log, found);
    const issued = await checkIssued(dir, acts, log.recordId);
    found.revisions = issued.revisions;
    found.faults.push(...issued.faults);
    found.remarks.push(...issued.remarks);
    await checkPhotos(dir, named, found);
  } finally {
    log.close();
  }
  return { ...found, ok: found.faults.length === 0 };
}

function withFault(found: Verification, code: string, path: string, message: string): Verification {
  return { ...found, ok: false, faults: [...found.faults, { code, path, message }] };
}

/** Checks chains and pieces; gives back the photos that pieces name, or ever named. */
function checkEvents(log: EventLog, found: Verification): { named: Map<string, string>; acts: PlacedAct[] } {
  const named = new Map<string, string>();
  const all: { position: number; event: RecordedEvent }[] = [];
  for (const id of log.pieces()) {
    const events = log.ofPiece(id);
    all.push(...events);
    checkPiece(id, events, found);
    for (const { event } of events) for (const sha of photosNamed(event)) named.set(sha, id);
  }
  all.sort((a, b) => a.position - b.position);
  found.events = all.length;
  found.pieces = log.pieces().length;
  checkChains(all, found);
  return { named, acts: all };
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

/** The SHA-256 of every photo that an act names, now or as what stood before. */
export function photosNamed(event: RecordedEvent): string[] {
  return [...JSON.stringify(event.changes).matchAll(/"sha256":"([0-9a-f]{64})"/g)].map(
    (match) => match[1] ?? '',
  );
}

async function checkPhotos(dir: string, named: Map<string, string>, found: Verification): Promise<void> {
  const paths = photoPaths(dir);
  const files = await originalFiles(dir);
  found.photos = files.length;
  for (const { name, path } of files) {
    if ((await hashFile(path)) !== name)
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
