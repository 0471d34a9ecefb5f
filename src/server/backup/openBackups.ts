import { statSync } from 'node:fs';
import type { Outcome } from '../../ground/fault.ts';
import type { BackupRequest, MadeBackup } from '../../record/backup/makeBackup.ts';
import { recordFile } from '../../record/openDataFolder.ts';
import type { RecordStore } from '../../record/store.ts';
import type { JobStep, Jobs } from '../jobs.ts';
import { openWorkerQueue } from '../workerQueue.ts';
import { type BackupKeeper, openBackupKeeper } from './backupKeeper.ts';

/** How often the program looks whether a copy is due. */
const lookEveryMs = 60_000;

/**
 * The back-ups of a running program: copied in a thread of its own, looked after every minute.
 *
 * @param worker  the built worker
 */
export function openBackups(
  worker: URL,
  parts: {
    dataDir: string;
    programVersion: string;
    jobs: Jobs;
    store: RecordStore;
    examples: ReadonlyMap<string, unknown>;
    /** The record is only looked at: no copy is made, and none is missed. */
    readOnly: boolean;
  },
): { keeper: BackupKeeper; close: () => Promise<void> } {
  const { dataDir, programVersion, jobs, store, examples, readOnly } = parts;
  const queue = openWorkerQueue<BackupRequest, Outcome<MadeBackup>, JobStep>(worker, {});
  const keeper = openBackupKeeper({
    dataDir,
    programVersion,
    jobs,
    make: (request, onStep) => queue.ask(request, onStep),
    firstAct: () => (readOnly ? undefined : firstActOf(store, examples)),
    lastWrite: () => lastWrite(dataDir),
    now: () => new Date(),
  });
  const timer = readOnly ? undefined : setInterval(() => void keeper.lookWhetherDue(), lookEveryMs);
  timer?.unref();
  return {
    keeper,
    async close() {
      clearInterval(timer);
      await queue.close();
    },
  };
}

function firstActOf(store: RecordStore, examples: ReadonlyMap<string, unknown>): string | undefined {
  const moments = store
    .pieces()
    .filter((id) => !examples.has(id))
    .flatMap((id) => store.times(id).firstAt ?? []);
  return moments.sort((a, b) => Date.parse(a) - Date.parse(b))[0];
}

/** When anything was last written to the record. */
function lastWrite(dataDir: string): number {
  const times = [recordFile(dataDir), `${recordFile(dataDir)}-wal`].map(
    (file) => statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0,
  );
  return Math.max(...times);
}
