import type { Fault } from '../../ground/fault.ts';
import { photosNamed } from '../../piece/photosNamed.ts';
import { recordFile } from '../openDataFolder.ts';
import { sqliteLog } from '../sqliteLog.ts';
import { verifyRecord } from '../verify.ts';

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
  const { recordId, head, named } = readLog(folder);
  return {
    recordId,
    count: head.count,
    head: head.hash,
    photosNamed: named,
    faults: found.faults.filter(({ code }) => !ofPhotos.has(code)),
  };
}

function readLog(folder: string) {
  const log = sqliteLog(recordFile(folder), { readOnly: true });
  try {
    const events = log.pieces().flatMap((piece) => log.ofPiece(piece));
    const named = [...new Set(events.flatMap(({ event }) => photosNamed(event)))].sort();
    return { recordId: log.recordId, head: log.recordHead(), named };
  } finally {
    log.close();
  }
}
