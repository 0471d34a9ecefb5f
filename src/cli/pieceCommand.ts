import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Outcome } from '../ground/fault.ts';
import type { KnowledgeFile } from '../knowledge/readEntries.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { CannotOpen } from '../record/fault.ts';
import type { BroughtIn } from '../record/pieceFile/bringIn.ts';
import type { WrittenPiece } from '../record/pieceFile/writePieceFile.ts';
import { programVersion } from './programVersion.ts';
import type { Terminal } from './terminal.ts';

const use =
  'Write piece out, the id of a piece and the file to write; or piece in and the file, with --beside to bring it in as a piece of its own. --data names another record than the usual one.';

/** `piece out ID FILE` and `piece in FILE`. Returns 0 when done, 2 when it can’t be done as it stands. */
export async function runPiece(
  args: readonly string[],
  usualDataFolder: string,
  terminal: Terminal,
): Promise<number> {
  const read = readArgs(args);
  const [way, ...names] = read?.positionals ?? [];
  const dataDir = String(read?.values.data ?? usualDataFolder);
  const [first = '', second = ''] = names;
  if (way === 'out' && names.length === 2) return takeOut(first, second, dataDir, terminal);
  if (way === 'in' && names.length === 1)
    return bringIn(first, dataDir, read?.values.beside === true, terminal);
  terminal.err(use);
  return 2;
}

async function takeOut(piece: string, to: string, dataDir: string, terminal: Terminal): Promise<number> {
  if (existsSync(to)) {
    terminal.err(`${to} is there already, and nothing is ever written over: name another file.`);
    return 2;
  }
  const house = await terminal.loadKnowledge();
  if (!house.ok) {
    for (const line of house.lines) terminal.err(line);
    return 2;
  }
  const written = await writeFrom(dataDir, piece, to, joinedKnowledge(dataDir, house.knowledge));
  if (!written.ok) return refused(written.faults, terminal);
  const { acts, photos, bytes, missing } = written.value;
  terminal.out(`Taken out into ${to}: ${acts} acts, ${photos} photos, ${(bytes / 1e6).toFixed(1)} MB.`);
  for (const sha of missing) terminal.out(`  The photo ${sha} was not in the data folder.`);
  return missing.length === 0 ? 0 : 1;
}

/** From a copy of the record's file: the folder may be write-protected, and stays as it is. */
async function writeFrom(
  dataDir: string,
  piece: string,
  to: string,
  knowledge: Knowledge,
): Promise<Outcome<WrittenPiece>> {
  const [{ recordAside }, { recordFile }, { writePieceFile }] = await Promise.all([
    import('../record/readOnly/recordAside.ts'),
    import('../record/openDataFolder.ts'),
    import('../record/pieceFile/writePieceFile.ts'),
  ]);
  const aside = existsSync(recordFile(dataDir)) ? recordAside(dataDir) : undefined;
  try {
    return await writePieceFile({
      dataDir,
      file: aside?.file ?? recordFile(dataDir),
      piece,
      to,
      knowledge,
      programVersion: programVersion(),
      now: new Date(),
    });
  } finally {
    aside?.remove();
  }
}

/** The house's knowledge with the user's own entries, as the running program last joined them. */
function joinedKnowledge(dataDir: string, house: Knowledge): Knowledge {
  try {
    return JSON.parse(readFileSync(join(dataDir, 'derived', 'knowledge.json'), 'utf8')) as Knowledge;
  } catch {
    return house;
  }
}

async function bringIn(file: string, dataDir: string, beside: boolean, terminal: Terminal): Promise<number> {
  if (!existsSync(file)) {
    terminal.err(`There is no file ${file}.`);
    return 2;
  }
  const house = await terminal.loadKnowledge();
  if (!house.ok) {
    for (const line of house.lines) terminal.err(line);
    return 2;
  }
  try {
    const came = await bringInto(dataDir, house.knowledge, file, beside);
    if (!came.ok) return refused(came.faults, terminal);
    const { piece, added, known, photos, remarks } = came.value;
    terminal.out(
      `Brought in as ${piece}: ${added} new acts, ${known} that were here already, ${photos} photos.`,
    );
    for (const remark of remarks) terminal.out(`  ${remark}`);
    return 0;
  } catch (error) {
    if (!(error instanceof CannotOpen)) throw error;
    terminal.err(
      error.code === 'record.in-use'
        ? `${error.message} While it runs, bring the file in on its first page.`
        : error.message,
    );
    return 2;
  }
}

async function bringInto(
  dataDir: string,
  knowledge: Knowledge,
  file: string,
  beside: boolean,
): Promise<Outcome<BroughtIn>> {
  const [
    { openDataFolder },
    { createStore },
    { openPhotos, photoLimits },
    { openOwnKnowledge },
    { bringInPiece },
  ] = await Promise.all([
    import('../record/openDataFolder.ts'),
    import('../record/store.ts'),
    import('../record/photos.ts'),
    import('../record/ownKnowledge.ts'),
    import('../record/pieceFile/bringIn.ts'),
  ]);
  const { log, lock } = openDataFolder(dataDir, programVersion());
  try {
    const store = createStore(log);
    const photos = await openPhotos(dataDir, {
      ...photoLimits,
      heicWorker: new URL('./heicWorker.js', import.meta.url),
    });
    const files = () =>
      JSON.parse(readFileSync(new URL('./knowledge-files.json', import.meta.url), 'utf8')) as KnowledgeFile[];
    const own = openOwnKnowledge(join(dataDir, 'own-knowledge'), { knowledge, files }, () => {});
    return await bringInPiece(
      file,
      join(dataDir, 'incoming', randomUUID()),
      { dataDir, store, photos, own },
      beside,
    );
  } finally {
    log.close();
    lock.release();
  }
}

function refused(faults: readonly { message: string }[], terminal: Terminal): number {
  for (const { message } of faults) terminal.err(message);
  return 2;
}

function readArgs(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: { data: { type: 'string' }, beside: { type: 'boolean' } },
      allowPositionals: true,
    });
  } catch {
    return undefined;
  }
}
