import { createHash } from 'node:crypto';
import type { Fault } from '../../calculations/define.ts';
import { canonicalJson } from '../canonicalJson.ts';
import { recordFile } from '../openDataFolder.ts';
import { sqliteLog } from '../sqliteLog.ts';
import { photosNamed, verifyRecord } from '../verify.ts';

/** What the database of a copy says of itself, read anew from the disk. */
export type DatabaseFacts = {
  recordId: string;
  count: number;
  head: string;
  /** The SHA-256 of every photo that its acts name. */
  photosNamed: string[];
  faults: Fault[];
};

/** Faults that speak of the photos, which a back-up keeps and checks by its own list. */
const ofPhotos = new Set(['verify.photo-missing', 'verify.photo-changed']);

/**
 * The count and head of the record in a folder, and what does not hold in its acts.
 *
 * @param folder  holds a record.db; its photos are not looked at
 */
export async function readDatabase(folder: string): Promise<DatabaseFacts> {
  const found = await verifyRecord(folder);
  const heads = found.devices
    .map(({ device, events, hash }) => [device, events, hash])
    .sort(([a], [b]) => (String(a) < String(b) ? -1 : 1));
  return {
    recordId: '',
    count: found.events,
    head: createHash('sha256').update(canonicalJson(heads)).digest('hex'),
    photosNamed: namedIn(folder),
    faults: found.faults.filter(({ code }) => !ofPhotos.has(code)),
  };
}

function namedIn(folder: string): string[] {
  const log = sqliteLog(recordFile(folder), true);
  try {
    const events = log.pieces().flatMap((piece) => log.ofPiece(piece));
    return [...new Set(events.flatMap(({ event }) => photosNamed(event)))].sort();
  } finally {
    log.close();
  }
}
