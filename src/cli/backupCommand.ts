import { parseArgs } from 'node:util';
import { counted } from '../ground/words.ts';
import type { MadeBackup } from '../record/backup/makeBackup.ts';
import type { Restored } from '../record/backup/restoreBackup.ts';
import { programVersion } from './programVersion.ts';
import type { Terminal } from './terminal.ts';

const backupUse =
  'Write backup and the folder the copies go into; --data names another record than the usual one.';
const restoreUse =
  'Write restore, the back-up, and a folder that is empty or not there yet; --what-is-whole takes a damaged back-up as far as it is whole.';

/** `backup DIR`: makes one dated copy and reads it back. Returns 0 when it is whole, 1 if not, 2 if it can't be made. */
export async function runBackup(
  args: readonly string[],
  usualDataFolder: string,
  terminal: Terminal,
): Promise<number> {
  const read = readArgs(args, { data: { type: 'string' } }, 1);
  const [folder] = read?.positionals ?? [];
  if (read === undefined || folder === undefined) {
    terminal.err(backupUse);
    return 2;
  }
  const { makeBackup } = await import('../record/backup/makeBackup.ts');
  const made = await makeBackup({
    dataDir: String(read.values.data ?? usualDataFolder),
    folder,
    madeBy: 'hand',
    programVersion: programVersion(),
    now: new Date(),
  });
  if (!made.ok) {
    for (const { message } of made.faults) terminal.err(message);
    return 2;
  }
  for (const line of backupLines(made.value)) terminal.out(line);
  const { missing, recordFaults } = made.value.manifest;
  return missing.length + recordFaults.length === 0 ? 0 : 1;
}

/** `restore BACKUP DIR`: brings a record back. Returns 0 when all of it came, 1 when something lacks, 2 when refused. */
export async function runRestore(args: readonly string[], terminal: Terminal): Promise<number> {
  const read = readArgs(args, { 'what-is-whole': { type: 'boolean' } }, 2);
  const [backup, to] = read?.positionals ?? [];
  if (read === undefined || backup === undefined || to === undefined) {
    terminal.err(restoreUse);
    return 2;
  }
  const { restoreBackup } = await import('../record/backup/restoreBackup.ts');
  const evenIfDamaged = read.values['what-is-whole'] === true;
  const restored = await restoreBackup({ backup, to, evenIfDamaged });
  if (!restored.ok) {
    for (const { path, message } of restored.faults)
      terminal.err(path === '' ? message : `${message} [${path}]`);
    if (restored.faults[0]?.code === 'restore.damaged')
      terminal.err('Add --what-is-whole to bring back what of it is whole.');
    return 2;
  }
  for (const line of restoreLines(restored.value, to)) terminal.out(line);
  return restored.value.lacking.length + restored.value.remarks.length === 0 ? 0 : 1;
}

/** What was made, in lines a person can read. */
function backupLines({ folder, name, manifest, copied, remarks }: MadeBackup): string[] {
  const { count, files, head } = manifest;
  return [
    `Copied and read back: ${counted(count, 'act')}, ${files.length} files (${copied.files} new, ${megabytes(copied.bytes)}).`,
    `  In ${folder}, “${name}”`,
    `  Head of the record: ${head}`,
    ...remarks,
  ];
}

function restoreLines({ name, manifest, lacking, remarks }: Restored, to: string): string[] {
  const { count, files, head } = manifest;
  return [
    `Brought back from “${name}” into ${to}: ${count} acts, ${files.length} files, read through.`,
    `  Head of the record: ${head}`,
    ...(lacking.length === 0 ? [] : ['What is lacking:', ...lacking.map(({ message }) => `  ${message}`)]),
    ...remarks,
    `Open it with: npm start -- --data ${/\s/.test(to) ? `"${to}"` : to}`,
  ];
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

function readArgs(
  args: readonly string[],
  options: Record<string, { type: 'string' | 'boolean' }>,
  most: number,
) {
  try {
    const read = parseArgs({ args: [...args], options, allowPositionals: true });
    return read.positionals.length > most ? undefined : read;
  } catch {
    return undefined;
  }
}
