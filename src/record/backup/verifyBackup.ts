import { basename, join } from 'node:path';
import type { Fault } from '../../ground/fault.ts';
import { backupPaths } from './backupFolder.ts';
import type { OnStep } from './backupStep.ts';
import { factsOf } from './durableFiles.ts';
import { type BackupManifest, type KeptFile, readManifest } from './manifest.ts';
import { readDatabase } from './readDatabase.ts';

/** What reading a dated copy back found: every file that is not whole is a fault with its path. */
export type BackupCheck = { ok: boolean; manifest: BackupManifest | undefined; faults: Fault[] };

/**
 * Reads all of a dated copy back from the disk: the hash of every file, every act of the database with its chain, and
 * whether count and head are those of the manifest.
 *
 * @param folder  the folder of back-ups, which has the store of files
 * @param dated   the folder of the dated copy
 */
export async function verifyBackup(
  folder: string,
  dated: string,
  onStep: OnStep = () => {},
): Promise<BackupCheck> {
  const manifest = await readManifest(dated);
  if (manifest === undefined) {
    const message = `The list of the copy “${basename(dated)}” (manifest.json) is not there or was changed: what belongs to it can’t be told.`;
    return { ok: false, manifest, faults: [{ code: 'backup.no-manifest', path: 'manifest.json', message }] };
  }
  const faults: Fault[] = [];
  const whole = await checkFile(join(dated, manifest.database.path), manifest.database, faults);
  if (whole) await checkDatabase(dated, manifest, faults);
  for (const [index, file] of manifest.files.entries()) {
    onStep({ step: 'Reading the copy back', done: index, total: manifest.files.length });
    await checkFile(backupPaths.stored(folder, file.sha256), file, faults);
  }
  return { ok: faults.length === 0, manifest, faults };
}

async function checkFile(at: string, { path, sha256 }: KeptFile, faults: Fault[]): Promise<boolean> {
  const facts = await factsOf(at).catch(() => undefined);
  if (facts?.sha256 === sha256) return true;
  const message =
    facts === undefined
      ? `${path} is not in the copy, or can’t be read.`
      : `${path} is not as it was copied: its bytes differ.`;
  faults.push({ code: facts === undefined ? 'backup.file-missing' : 'backup.file-changed', path, message });
  return false;
}

async function checkDatabase(dated: string, manifest: BackupManifest, faults: Fault[]): Promise<void> {
  const facts = await readDatabase(dated);
  if (facts.count !== manifest.count || facts.head !== manifest.head || facts.recordId !== manifest.recordId)
    faults.push({
      code: 'backup.other-record',
      path: manifest.database.path,
      message: 'The acts in the copy are not those its list names: count, head or record differ.',
    });
  const known = new Set(manifest.recordFaults.map(({ code, path }) => `${code} ${path}`));
  for (const fault of facts.faults) if (!known.has(`${fault.code} ${fault.path}`)) faults.push(fault);
}
