import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, resolve } from 'node:path';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import { type DatedCopy, datedCopies, folderFor } from '../../record/backup/backupFolder.ts';
import type { BackupRequest, MadeBackup } from '../../record/backup/makeBackup.ts';
import { readSettings, type Settings, writeSettings } from '../../record/settings.ts';
import type { JobStep, Jobs } from '../jobs.ts';
import { backupDue } from './backupDue.ts';
import { type BackupWarning, backupWarning } from './backupWarning.ts';

/** How the back-ups of a record stand, as the screens are told. */
export type BackupStatus = {
  folder: string;
  usualFolder: string;
  daily: boolean;
  copies: number;
  last: { name: string; madeAt: string; acts: number; files: number; missing: number } | null;
  /** The job that makes a copy now. */
  running: string | null;
  /** What the newest copy of this run has to tell. */
  remarks: string[];
  warning: BackupWarning | null;
};

/** Makes copies when asked and by itself, one at a time, and knows how they stand. */
export type BackupKeeper = {
  status(): Promise<BackupStatus>;
  /** Begins a copy, or joins the one that is being made; answers its job. */
  begin(madeBy: BackupRequest['madeBy']): string;
  choose(settings: { folder?: string | undefined; daily?: boolean | undefined }): Promise<Outcome<undefined>>;
  /** Looks whether a copy is due, and begins it. Called every minute while the program runs. */
  lookWhetherDue(): Promise<void>;
};

/** What the keeper needs of the program. */
export type KeeperParts = {
  dataDir: string;
  programVersion: string;
  jobs: Jobs;
  make: (request: BackupRequest, onStep: (step: JobStep) => void) => Promise<Outcome<MadeBackup>>;
  /** The moment of the first act of the user's own, by the clock of its device. */
  firstAct: () => string | undefined;
  /** When anything was last written to the record, in milliseconds. */
  lastWrite: () => number;
  now: () => Date;
};

/** Where copies go while no folder was chosen: beside the data folder. */
function usualBackupFolder(dataDir: string): string {
  const at = resolve(dataDir);
  return join(dirname(at), `${basename(at)}-backups`);
}

export function openBackupKeeper(parts: KeeperParts): BackupKeeper {
  const { dataDir, jobs, make, now } = parts;
  const state = {
    running: null as string | null,
    failed: undefined as { at: number; message: string } | undefined,
    remarks: [] as string[],
  };
  const folderOf = (settings: Settings) => settings.backupFolder ?? usualBackupFolder(dataDir);

  const copy = async (
    madeBy: BackupRequest['madeBy'],
    onStep: (step: JobStep) => void,
  ): Promise<Uint8Array> => {
    const settings = readSettings(dataDir);
    const folder = folderOf(settings);
    try {
      // A disk that is not there must not be taken for an empty folder in its place.
      if (settings.backupFolder !== undefined && !existsSync(folder))
        throw new Error(`The folder ${folder} is not there: is its disk plugged in?`);
      const request = { dataDir, folder, madeBy, programVersion: parts.programVersion, now: now() };
      const made = await make(request, onStep);
      if (!made.ok) throw new Error(made.faults.map(({ message }) => message).join(' '));
      state.failed = undefined;
      state.remarks = made.value.remarks;
      return Buffer.from(JSON.stringify({ name: made.value.name, remarks: made.value.remarks }));
    } catch (error) {
      state.failed = { at: now().getTime(), message: (error as Error).message };
      throw error;
    } finally {
      state.running = null;
    }
  };
  const begin: BackupKeeper['begin'] = (madeBy) => {
    // Begun a turn later, so that a copy that fails at once still finds itself named as the one that runs.
    state.running ??= jobs.begin((onStep) => Promise.resolve().then(() => copy(madeBy, onStep)));
    return state.running;
  };

  const status: BackupKeeper['status'] = async () => {
    const settings = readSettings(dataDir);
    const folder = folderOf(settings);
    const copies = (await datedCopies(folder)).filter(isReadable);
    const [last] = copies;
    const lastCopy = last === undefined ? undefined : Date.parse(last.manifest.madeAt);
    const first = parts.firstAct();
    const firstAct = first === undefined ? undefined : Date.parse(first);
    return {
      folder,
      usualFolder: usualBackupFolder(dataDir),
      daily: settings.dailyBackups,
      copies: copies.length,
      last: last === undefined ? null : inShort(last),
      running: state.running,
      remarks: state.remarks,
      warning: backupWarning({ now: now().getTime(), firstAct, lastCopy, failed: state.failed }) ?? null,
    };
  };

  return {
    status,
    begin,
    async choose({ folder, daily }) {
      const settings = readSettings(dataDir);
      if (daily !== undefined) settings.dailyBackups = daily;
      if (folder === '' || folder === usualBackupFolder(dataDir)) settings.backupFolder = undefined;
      else if (folder !== undefined) {
        const usable = await usableFolder(folder, dataDir);
        if (!usable.ok) return usable;
        settings.backupFolder = usable.value;
      }
      await writeSettings(dataDir, settings);
      state.failed = undefined;
      return done(undefined);
    },
    async lookWhetherDue() {
      if (state.running !== null || parts.firstAct() === undefined) return;
      const { last, daily } = await status();
      if (!daily) return;
      const due = backupDue({
        now: now().getTime(),
        lastCopy: last === null ? undefined : Date.parse(last.madeAt),
        lastWrite: parts.lastWrite(),
        lastFailure: state.failed?.at,
      });
      if (due !== undefined) begin('itself');
    },
  };
}

type ReadableCopy = DatedCopy & { manifest: NonNullable<DatedCopy['manifest']> };

function isReadable(copy: DatedCopy): copy is ReadableCopy {
  return copy.manifest !== undefined;
}

function inShort({ name, manifest }: ReadableCopy): NonNullable<BackupStatus['last']> {
  const { madeAt, count, files, missing } = manifest;
  return { name, madeAt, acts: count, files: files.length, missing: missing.length };
}

async function usableFolder(folder: string, dataDir: string): Promise<Outcome<string>> {
  if (!isAbsolute(folder))
    return refuse(
      'backup.not-a-path',
      'Write the whole path of the folder, as the file manager of this computer shows it.',
      'folder',
    );
  const usable = await folderFor(folder, dataDir);
  if (!usable.ok) return usable;
  try {
    await mkdir(usable.value, { recursive: true, mode: 0o700 });
    return usable;
  } catch (error) {
    return refuse(
      'backup.not-writable',
      `The folder ${usable.value} can’t be made (${(error as Error).message}): choose another.`,
      'folder',
    );
  }
}
