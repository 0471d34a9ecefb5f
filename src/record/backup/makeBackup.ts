import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import { recordFile } from '../openDataFolder.ts';
import { backupPaths, folderFor, markFolder } from './backupFolder.ts';
import type { OnStep } from './backupStep.ts';
import { copyDatabase } from './copyDatabase.ts';
import { copyDurably, factsOf, syncFolder, writeDurably } from './durableFiles.ts';
import { type BackupManifest, type KeptFile, manifestName, manifestText } from './manifest.ts';
import { readDatabase } from './readDatabase.ts';
import { sourceFiles } from './sourceFiles.ts';
import { verifyBackup } from './verifyBackup.ts';

/** What is asked: the record, where to, who asks, and the moment. */
export type BackupRequest = {
  dataDir: string;
  folder: string;
  madeBy: BackupManifest['madeBy'];
  programVersion: string;
  now: Date;
};

/** A copy that was made and read back. `remarks` say in words what was mended, or was not there to be copied. */
export type MadeBackup = {
  folder: string;
  name: string;
  manifest: BackupManifest;
  copied: { files: number; bytes: number };
  remarks: string[];
};

/**
 * Makes one dated copy of a record and reads all of it back. Photos and other files that earlier copies hold are not
 * copied again. May run while the program writes: every act that was answered for before the call is in the copy.
 * The copy has its name only when it is whole, flushed and verified; what fails leaves earlier copies as they were.
 */
export async function makeBackup(
  request: BackupRequest,
  onStep: OnStep = () => {},
): Promise<Outcome<MadeBackup>> {
  const { dataDir } = request;
  if (!existsSync(recordFile(dataDir)))
    return refuse('backup.no-record', `There is no record in ${dataDir}: nothing was copied.`);
  const folder = await folderFor(request.folder, dataDir);
  if (!folder.ok) return folder;
  try {
    return await makeInto(folder.value, request, onStep);
  } catch (error) {
    return backupFault(error, folder.value);
  }
}

async function makeInto(
  folder: string,
  request: BackupRequest,
  onStep: OnStep,
): Promise<Outcome<MadeBackup>> {
  const { dataDir, now } = request;
  await mkdir(folder, { recursive: true, mode: 0o700 });
  await removeLeftOvers(folder, now);
  const name = await freeName(folder, now);
  const coming = backupPaths.dated(folder, `${name}.unfinished`);
  await mkdir(coming, { mode: 0o700 });
  try {
    onStep({ step: 'Copying the record', done: 0, total: 1 });
    // The database first: what its acts name was on the disk before them, so it is there to be copied after.
    await copyDatabase(recordFile(dataDir), recordFile(coming));
    const facts = await readDatabase(coming);
    const marked = await markFolder(folder, facts.recordId);
    if (!marked.ok) return marked;
    const kept = await keepFiles(dataDir, folder, onStep);
    const manifest: BackupManifest = {
      kind: 'underside-backup',
      format: 1,
      recordId: facts.recordId,
      madeAt: now.toISOString(),
      madeBy: request.madeBy,
      programVersion: request.programVersion,
      count: facts.count,
      head: facts.head,
      database: { path: 'record.db', ...(await factsOf(recordFile(coming))) },
      files: kept.files,
      missing: facts.photosNamed
        .filter((sha) => !kept.files.some((file) => file.path === `photos/${sha.slice(0, 2)}/${sha}`))
        .map((sha) => ({
          path: `photos/${sha.slice(0, 2)}/${sha}`,
          message: `The photo ${sha} is named in the record and was not in the data folder.`,
        })),
      recordFaults: facts.faults.map(({ code, path, message }) => ({ code, path, message })),
    };
    await writeDurably(join(coming, manifestName), manifestText(manifest));
    const checked = await verifyBackup(folder, coming, onStep);
    if (!checked.ok) return { ok: false, faults: checked.faults };
    const final = backupPaths.dated(folder, name);
    await rename(coming, final);
    await syncFolder(folder);
    const remarks = [
      ...kept.remarks,
      ...manifest.missing.map((one) => one.message),
      ...manifest.recordFaults.map((one) => `The record itself does not hold: ${one.message}`),
    ];
    return done({ folder, name, manifest, copied: kept.copied, remarks });
  } finally {
    await rm(coming, { recursive: true, force: true });
  }
}

/** Brings every file of the record into the store, unless it is there, and mends what is there and not whole. */
async function keepFiles(dataDir: string, folder: string, onStep: OnStep) {
  const kept = { files: [] as KeptFile[], copied: { files: 0, bytes: 0 }, remarks: [] as string[] };
  const paths = await sourceFiles(dataDir);
  for (const [index, path] of paths.entries()) {
    onStep({ step: 'Copying photos and files', done: index, total: paths.length });
    const from = join(dataDir, path);
    const named = /^photos\/..\/([0-9a-f]{64})$/.exec(path)?.[1];
    if (named !== undefined) {
      const there = await factsOf(backupPaths.stored(folder, named)).catch(() => undefined);
      if (there?.sha256 === named) {
        kept.files.push({ path, ...there });
        continue;
      }
      if (there !== undefined)
        kept.remarks.push(`The copy of ${path} in the back-ups was damaged: it is copied anew.`);
    }
    const source = await factsOf(from);
    if (named !== undefined && source.sha256 !== named)
      kept.remarks.push(`The photo ${named} is not as it was kept, and is copied as it is.`);
    const to = backupPaths.stored(folder, source.sha256);
    const there = named === source.sha256 ? undefined : await factsOf(to).catch(() => undefined);
    if (there?.sha256 !== source.sha256) {
      const copied = await copyDurably(from, to);
      if (copied.sha256 !== source.sha256) {
        await rm(to, { force: true });
        throw new Error(`${path} changed while it was copied`);
      }
      kept.copied.files++;
      kept.copied.bytes += copied.bytes;
    }
    kept.files.push({ path, ...source });
  }
  return kept;
}

/** Copies that a loss of power cut short; another program may be at one of today. */
async function removeLeftOvers(folder: string, now: Date): Promise<void> {
  for (const name of await readdir(folder)) {
    if (!name.endsWith('.unfinished')) continue;
    const { mtimeMs } = await stat(join(folder, name));
    if (now.getTime() - mtimeMs > 86_400_000) await rm(join(folder, name), { recursive: true, force: true });
  }
}

async function freeName(folder: string, now: Date): Promise<string> {
  const taken = new Set((await readdir(folder)).map((name) => name.replace(/\.unfinished$/, '')));
  const two = (n: number) => String(n).padStart(2, '0');
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  const base = `${day} ${two(now.getHours())}.${two(now.getMinutes())}.${two(now.getSeconds())}`;
  if (!taken.has(base)) return base;
  for (let n = 2; ; n++) if (!taken.has(`${base} (${n})`)) return `${base} (${n})`;
}

function backupFault(error: unknown, folder: string): ReturnType<typeof refuse> {
  const { code = '', message } = error as NodeJS.ErrnoException;
  if (code === 'ENOSPC' || code === 'SQLITE_FULL')
    return refuse(
      'backup.disk-full',
      `The disk of ${folder} is full: no copy was made, and earlier copies are as they were. Free some space, or choose another disk.`,
    );
  if (['EACCES', 'EPERM', 'EROFS'].includes(code))
    return refuse(
      'backup.not-writable',
      `The folder ${folder} can’t be written: choose another, or mend its permissions.`,
    );
  return refuse('backup.failed', `No copy was made (${message}); earlier copies are as they were.`);
}
