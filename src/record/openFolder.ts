import { existsSync } from 'node:fs';
import { hostname } from 'node:os';
import type { EventLog } from './eventLog.ts';
import { CannotOpen } from './fault.ts';
import { holderOf } from './lockFolder.ts';
import { openDataFolder, recordFile } from './openDataFolder.ts';
import { lookAtFolder } from './readOnly/lookAtFolder.ts';
import { asked, inUse, notWritable, type ReadOnly } from './readOnly/readOnly.ts';

/** A data folder as a running program has it: to work in, or to look at only. */
export type OpenedFolder = {
  log: EventLog;
  /** The file of the record: the folder's own, or a copy of it where it is only looked at. */
  file: string;
  /** Where derived pictures and what is arriving are kept: the folder itself, or another where it is only looked at. */
  workDir: string;
  /** Why nothing can be entered; undefined where it can. */
  readOnly: ReadOnly | undefined;
  /** The sentence with which the folder could not be opened to work in. */
  refused: string;
  /** Writes down where this program answers, for the sentence a second one prints. */
  sayAddress(address: string): void;
  /** Lets go of the folder; nothing is read of its record after. */
  close(): void;
};

/**
 * Opens a data folder to work in; to look at only, where that is asked for, where the folder can't be written, and where
 * another running program has it.
 *
 * @param now  the moment, for what is said of a record that another program goes on writing
 * @throws CannotOpen with one plain sentence
 */
export function openFolder(
  dir: string,
  { programVersion, readOnly, now }: { programVersion: string; readOnly: boolean; now: Date },
): OpenedFolder {
  if (readOnly) return looked(dir, asked(), '', true);
  try {
    const { log, lock } = openDataFolder(dir, programVersion);
    return {
      log,
      file: recordFile(dir),
      workDir: dir,
      readOnly: undefined,
      refused: '',
      sayAddress: (address) => lock.sayAddress(address),
      close() {
        log.close();
        lock.release();
      },
    };
  } catch (error) {
    if (!(error instanceof CannotOpen) || !existsSync(recordFile(dir))) throw error;
    if (error.code === 'record.in-use') return looked(dir, inUse(whereHeld(dir), timeOf(now)), error.message);
    if (error.code === 'record.folder-not-writable') return looked(dir, notWritable(), error.message);
    throw error;
  }
}

function looked(dir: string, why: ReadOnly, refused: string, evenNewer = false): OpenedFolder {
  return { ...lookAtFolder(dir, why, evenNewer), refused, sayAddress: () => {} };
}

/** Where the other program is to be found: at an address of this computer, or on another one. */
function whereHeld(dir: string): string {
  const { address, host } = holderOf(dir);
  if (host !== undefined && host !== hostname()) return `on the computer “${host}”`;
  return address === undefined ? '' : `at ${address}`;
}

function timeOf(now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${two(now.getHours())}:${two(now.getMinutes())}`;
}
