import { parentPort } from 'node:worker_threads';
import type { Outcome } from '../../ground/fault.ts';
import { type BackupRequest, type MadeBackup, makeBackup } from '../../record/backup/makeBackup.ts';
import { pruneBackups } from '../../record/backup/pruneBackups.ts';
import type { WorkerQuestion } from '../workerQueue.ts';

/** Copies, reads back and thins out in a thread of its own: hashing every photo must not keep entries waiting. */
parentPort?.on('message', async ({ ask, question }: WorkerQuestion<BackupRequest>) => {
  try {
    const made = await makeBackup(question, (step) => parentPort?.postMessage({ ask, step }));
    parentPort?.postMessage({ ask, answer: await thinnedOut(made) });
  } catch (error) {
    parentPort?.postMessage({ ask, failed: (error as Error).message });
  }
});

/** Only a copy that was just verified lets earlier ones go. */
async function thinnedOut(made: Outcome<MadeBackup>): Promise<Outcome<MadeBackup>> {
  if (!made.ok || made.value.manifest.madeBy !== 'itself') return made;
  const { remarks } = await pruneBackups(made.value.folder, made.value.name);
  return { ok: true, value: { ...made.value, remarks: [...made.value.remarks, ...remarks] } };
}
