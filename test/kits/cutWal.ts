import { readFileSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { RecordHead } from '../../src/record/recordHead.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { finding, opening } from './drafts.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** A record as a power cut leaves it: its file, what waits beside it to be brought in, and what was acknowledged when. */
export type Waiting = {
  record: Buffer;
  wal: Buffer;
  /** After each commit: how long the waiting file was, the acts acknowledged by then, and the head. */
  commits: { walBytes: number; ids: string[]; head: RecordHead }[];
};

/** Bytes before the first frame, before a frame's page, and of a page. Source: SQLite, “WAL-mode File Format”. */
export const walParts = { header: 32, frameHeader: 24, page: 4096 };

/**
 * Makes a record whose last `acts` acts wait in the write-ahead file.
 *
 * @param settled  whether what came before them is in the record's own file, or the record is new
 */
export async function waitingRecord(acts: number, settled: boolean): Promise<Waiting> {
  const file = join(await temporaryFolder(), 'record.db');
  const ids: string[] = [];
  if (settled) {
    const log = sqliteLog(file);
    const first = opening('one');
    createStore(log).append([first]);
    ids.push(first.id);
    // The last to close a record brings in all that waits.
    log.close();
  }
  const log = sqliteLog(file);
  const store = createStore(log);
  const bytesNow = () => statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0;
  const commits = [{ walBytes: bytesNow(), ids: [...ids], head: store.head() }];
  for (let n = ids.length; n < acts + Number(settled); n++) {
    const act = n === 0 ? opening('one') : finding('one', `sign-${n}`, 'splat');
    if (!store.append([act]).ok) throw new Error('The act was not taken.');
    ids.push(act.id);
    commits.push({ walBytes: bytesNow(), ids: [...ids], head: store.head() });
  }
  const waiting = { record: readFileSync(file), wal: readFileSync(`${file}-wal`), commits };
  log.close();
  return waiting;
}

/** Puts a record with another waiting file into a folder of its own. */
export async function folderWith(record: Buffer, wal: Buffer): Promise<string> {
  const dir = await temporaryFolder();
  await writeFile(join(dir, 'record.db'), record);
  await writeFile(join(dir, 'record.db-wal'), wal);
  return dir;
}

/** Every kind of place to cut at: in the header, and for each commit within its frames, at its end, and a byte about it. */
export function placesToCut({ commits, wal }: Waiting): number[] {
  const { header, frameHeader, page } = walParts;
  const about = commits.flatMap(({ walBytes }) => [
    walBytes - frameHeader - page,
    walBytes - page,
    walBytes - page / 2,
    walBytes - 1,
    walBytes,
    walBytes + 1,
    walBytes + frameHeader,
  ]);
  const places = [0, 1, header / 2, header - 1, header, header + 1, ...about];
  return [...new Set(places)].filter((at) => at >= 0 && at <= wal.length).sort((a, b) => a - b);
}
