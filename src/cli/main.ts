import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { isAbsolute } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { CannotOpen } from '../record/fault.ts';
import { photoLimits } from '../record/photos.ts';
import { readPixels } from '../record/readPixels.ts';
import { runBackup, runRestore } from './backupCommand.ts';
import { runCalc } from './calcCommand.ts';
import { helpText } from './help.ts';
import { loadKnowledge } from './loadKnowledge.ts';
import { runPiece } from './pieceCommand.ts';
import type { Terminal } from './terminal.ts';
import { runVerify } from './verifyCommand.ts';

/** What the starter of the program knows and the bundled program can't. */
export type Starter = {
  /** Where the record lies when no `--data` is given. */
  usualDataFolder: string;
  /** Called before the knowledge is read, to compile it anew where its files have changed. */
  refreshKnowledge?: () => Promise<void>;
};

/**
 * Runs one command of the terminal program.
 *
 * @param args     the words after the program's name
 * @param starter  what the starter knows of this machine
 * @returns the exit code: 0 done, 1 a check did not hold, 2 what was asked can't be done as it stands
 */
export async function runFromTerminal(args: readonly string[], starter: Starter): Promise<number> {
  const terminal = terminalOf(starter);
  try {
    return await runCommand(args, starter, terminal);
  } catch (error) {
    if (!(error instanceof CannotOpen)) throw error;
    terminal.err(error.message);
    return 2;
  }
}

async function runCommand(args: readonly string[], starter: Starter, terminal: Terminal): Promise<number> {
  const [command, ...rest] = args;
  if (command === 'calc') return runCalc(rest, terminal);
  if (command === 'backup') return runBackup(rest, starter.usualDataFolder, terminal);
  if (command === 'restore') return runRestore(rest, terminal);
  if (command === 'piece') return runPiece(rest, starter.usualDataFolder, terminal);
  if (command === 'verify') return runVerify(rest, starter.usualDataFolder, terminal);
  if (command === undefined || command === 'help' || command === '--help' || command === '-h') {
    terminal.out(helpText);
    return 0;
  }
  terminal.err(`There is no command “${command}”: write calc, verify, backup, restore, piece or help.`);
  return 2;
}

function terminalOf(starter: Starter): Terminal {
  return {
    out: (line) => void process.stdout.write(`${line}\n`),
    err: (line) => void process.stderr.write(`${line}\n`),
    readInput: (file) => (file === '-' ? text(process.stdin) : readFile(file, 'utf8')),
    loadKnowledge: async () => {
      await starter.refreshKnowledge?.();
      return loadKnowledge();
    },
    readPicture: (file) =>
      readPixels(pictureAt(file), {
        ...photoLimits,
        heicWorker: new URL('./heicWorker.js', import.meta.url),
      }),
    yearNow: () => new Date().getFullYear(),
  };
}

/** A picture where the person is, or one that came with the program: the examples name those, and run from any folder. */
function pictureAt(file: string): string {
  if (isAbsolute(file) || existsSync(file)) return file;
  const shipped = fileURLToPath(new URL(`../${file}`, import.meta.url));
  return existsSync(shipped) ? shipped : file;
}
