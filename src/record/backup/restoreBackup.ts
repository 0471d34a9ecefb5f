import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm, rmdir } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { Fault } from '../../ground/fault.ts';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import { recordFile } from '../openDataFolder.ts';
import { backupPaths, type DatedCopy, datedCopies } from './backupFolder.ts';
import type { OnStep } from './backupStep.ts';
import { copyDurably, factsOf, syncFolder } from './durableFiles.ts';
import { type BackupManifest, type KeptFile, manifestName } from './manifest.ts';
import { readDatabase } from './readDatabase.ts';
import { verifyBackup } from './verifyBackup.ts';

/** What is asked: a folder of back-ups or one dated copy in it, an empty folder, and whether a damaged copy will do. */
export type RestoreRequest = { backup: string; to: string; evenIfDamaged?: boolean };

/** A record that was brought back and read through. `lacking` lists what could not be. */
export type Restored = { name: string; manifest: BackupManifest; lacking: Fault[]; remarks: string[] };

/**
 * Brings a record back from a copy into an empty folder. The copy is verified first: a damaged one is refused, with all
 * that is wrong with it, unless `evenIfDamaged` asks for what of it is whole. Nothing is ever written over; the folder
 * has its name only when all is in it and read back.
 */
export async function restoreBackup(
  request: RestoreRequest,
  onStep: OnStep = () => {},
): Promise<Outcome<Restored>> {
  const to = resolve(request.to);
  if (existsSync(to) && (await readdir(to).catch(() => ['?'])).length > 0)
    return refuse(
      'restore.not-empty',
      `${to} is not an empty folder, and nothing is ever written over: name a folder that is empty or not there yet.`,
      'to',
    );
  const chosen = await chooseCopy(resolve(request.backup), request.evenIfDamaged === true, onStep);
  if (!chosen.ok) return chosen;
  const { folder, copy, faults, passedOver } = chosen.value;
  const coming = `${to}.unfinished`;
  if (existsSync(coming))
    return refuse(
      'restore.left-over',
      `${coming} is left from a restoring that was cut short: remove it first.`,
      'to',
    );
  try {
    const bad = new Set(faults.map(({ path }) => path));
    await mkdir(coming, { recursive: true, mode: 0o700 });
    const put = async (from: string, file: KeptFile) => {
      if (bad.has(file.path) && file.path !== 'record.db') return;
      const copied = await copyDurably(from, join(coming, file.path));
      if (copied.sha256 !== file.sha256 && !bad.has(file.path))
        throw new Error(`${file.path} changed while it was read`);
    };
    await put(recordFile(copy.path), copy.manifest.database);
    for (const [index, file] of copy.manifest.files.entries()) {
      onStep({ step: 'Bringing files back', done: index, total: copy.manifest.files.length });
      await put(backupPaths.stored(folder, file.sha256), file);
    }
    const unlike = await compareWithManifest(coming, copy.manifest, bad);
    if (unlike.length > 0) return { ok: false, faults: unlike };
    if (existsSync(to)) await rmdir(to);
    await rename(coming, to);
    await syncFolder(dirname(to));
    const lacking = [
      ...faults,
      ...copy.manifest.missing.map((one) => ({ code: 'restore.was-missing', ...one })),
    ];
    const remarks = [
      ...passedOver.map((name) => `The newer copy “${name}” is not whole and was passed over.`),
      ...copy.manifest.recordFaults.map(
        (one) => `The record did not hold when it was copied: ${one.message}`,
      ),
    ];
    return done({ name: copy.name, manifest: copy.manifest, lacking, remarks });
  } catch (error) {
    return refuse('restore.failed', `The record was not brought back (${(error as Error).message}).`);
  } finally {
    await rm(coming, { recursive: true, force: true });
  }
}

type Readable = DatedCopy & { manifest: BackupManifest };
type Chosen = { folder: string; copy: Readable; faults: Fault[]; passedOver: string[] };

/** The copy that was named, or the newest whole one of a folder of back-ups. */
async function chooseCopy(at: string, evenIfDamaged: boolean, onStep: OnStep): Promise<Outcome<Chosen>> {
  const isDated = existsSync(join(at, manifestName)) || existsSync(recordFile(at));
  const folder = isDated ? dirname(at) : await foldersWithCopies(at);
  const copies = (await datedCopies(folder)).filter((one) => !isDated || one.name === basename(at));
  if (copies.length === 0)
    return refuse('restore.no-backup', `There is no back-up of Underside in ${at}.`, 'backup');
  const found: Fault[] = [];
  const passedOver: string[] = [];
  for (const copy of copies) {
    const { manifest } = copy;
    const { faults } = await verifyBackup(folder, copy.path, onStep);
    if (
      manifest !== undefined &&
      (faults.length === 0 || (evenIfDamaged && (await recordReads(copy, faults))))
    )
      return done({ folder, copy: { ...copy, manifest }, faults, passedOver });
    found.push(...faults.map((fault) => ({ ...fault, path: `${copy.name}/${fault.path}` })));
    passedOver.push(copy.name);
  }
  const head = refuse(
    'restore.damaged',
    isDated
      ? `The copy “${basename(at)}” is not whole: nothing was brought back. Take another copy, or ask for what of this one is whole.`
      : `None of the ${copies.length} copies in ${folder} is whole: nothing was brought back. Ask for what of one is whole.`,
    'backup',
  );
  return { ok: false, faults: [...head.faults, ...found] };
}

/** A user may name the folder they chose, within which back-ups have a folder of their own. */
async function foldersWithCopies(at: string): Promise<string> {
  const within = join(at, 'underside-backups');
  return (await datedCopies(at)).length === 0 && existsSync(within) ? within : at;
}

/** Whether a damaged copy still has a record to bring back: the database opens and its acts can be read. */
async function recordReads(copy: DatedCopy, faults: readonly Fault[]): Promise<boolean> {
  if (!faults.some(({ path }) => path === 'record.db')) return true;
  return readDatabase(copy.path).then(
    ({ count }) => count > 0,
    () => false,
  );
}

/** Reads what was brought back once more: every byte by its hash, the acts by their chain. */
async function compareWithManifest(
  dir: string,
  manifest: BackupManifest,
  bad: ReadonlySet<string>,
): Promise<Fault[]> {
  const unlike: Fault[] = [];
  const fault = (path: string) =>
    unlike.push({
      code: 'restore.unlike',
      path,
      message: `${path} did not come back as it was copied: try again.`,
    });
  for (const file of [manifest.database, ...manifest.files]) {
    if (bad.has(file.path)) continue;
    const facts = await factsOf(join(dir, file.path)).catch(() => undefined);
    if (facts?.sha256 !== file.sha256) fault(file.path);
  }
  if (bad.has('record.db')) return unlike;
  const { count, head } = await readDatabase(dir);
  if (count !== manifest.count || head !== manifest.head) fault('record.db');
  return unlike;
}
