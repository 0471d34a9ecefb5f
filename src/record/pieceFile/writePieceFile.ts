import { createHash } from 'node:crypto';
import { createWriteStream, existsSync } from 'node:fs';
import { open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { parse } from 'yaml';
import { ZipFile } from 'yazl';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { opinionOf } from '../../opinion/setOpinion.ts';
import { type MediaType, sniffMediaType } from '../../photo/file/sniffMediaType.ts';
import type { RecordedEvent } from '../../piece/event.ts';
import { type Piece, piece as pieceSchema } from '../../piece/piece.ts';
import { factsOf, syncFile } from '../backup/durableFiles.ts';
import { photoPaths } from '../photoPaths.ts';
import { stateAfterAll } from '../pieceState.ts';
import { sqliteLog } from '../sqliteLog.ts';
import { indexPage } from './indexPage.ts';
import { manifestName, type PieceFileManifest, pieceManifestText } from './pieceFileManifest.ts';

/** What is asked: which piece of which record, the knowledge to read it with, and the file to write. */
export type WritePieceRequest = {
  dataDir: string;
  /** The file of the record: a copy of it where the folder is only looked at. */
  file: string;
  piece: string;
  to: string;
  knowledge: Knowledge;
  programVersion: string;
  now: Date;
};

/** What was written. */
export type WrittenPiece = { bytes: number; acts: number; photos: number; missing: string[] };

export type OnStep = (step: { step: string; done: number; total: number }) => void;

const endings: Record<MediaType, string> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/tiff': 'tif',
  'image/heic': 'heic',
};
const shownByBrowsers = new Set<MediaType>(['image/jpeg', 'image/png', 'image/webp']);

/** A file of the zip: from the disk, or made here. */
type Content = { path: string; from: string | Buffer };

/**
 * Writes one piece as one zip: all its acts with their hashes, the photos as they came, issued revisions, the signs and
 * shops of one's own that it is read with, and a page that shows it in any browser. May run beside the program.
 */
export async function writePieceFile(
  request: WritePieceRequest,
  onStep: OnStep = () => {},
): Promise<Outcome<WrittenPiece>> {
  const { dataDir, file, to, knowledge } = request;
  if (!existsSync(file)) return refuse('piece-file.no-record', `There is no record in ${dataDir}.`, 'data');
  const read = readPiece(file, request.piece);
  if (!read.ok) return read;
  const { piece, events, recordId } = read.value;
  onStep({ step: 'Gathering the photos', done: 0, total: 3 });
  const photos = await photoContents(dataDir, events);
  const about: Omit<PieceFileManifest, 'files'> = {
    kind: 'underside-piece',
    format: 1,
    piece: piece.id,
    title: piece.title,
    recordId,
    acts: events.length,
    madeAt: request.now.toISOString(),
    programVersion: request.programVersion,
    knowledgeVersion: knowledge.version,
    missing: photos.missing,
  };
  onStep({ step: 'Weighing the findings', done: 1, total: 3 });
  const paths = new Set(photos.contents.map(({ path }) => path));
  const find = (wanted: (path: string) => boolean) => [...paths].find(wanted);
  const page = indexPage({
    document: opinionOf({
      piece,
      knowledge,
      yearNow: request.now.getFullYear(),
      madeOn: request.now.toISOString().slice(0, 10),
      version: request.programVersion,
    }),
    photos: Object.values(piece.photos),
    events,
    about,
    originalOf: (sha) => find((path) => path.startsWith(`photos/${sha}.`)),
    pictureOf: (sha) =>
      find((path) => path === `shown/${sha}.jpg`) ??
      find((path) => path.startsWith(`photos/${sha}.`) && /\.(jpg|png|webp)$/.test(path)),
  });
  const contents: Content[] = [
    { path: 'index.html', from: Buffer.from(page) },
    { path: 'acts.jsonl', from: Buffer.from(events.map((event) => `${JSON.stringify(event)}\n`).join('')) },
    {
      path: 'own-knowledge.json',
      from: Buffer.from(JSON.stringify(await ownEntries(dataDir, piece), null, 2)),
    },
    ...(await issuedContents(dataDir, piece.id)),
    ...photos.contents,
  ];
  onStep({ step: 'Writing the file', done: 2, total: 3 });
  try {
    await writeZip(to, contents, about);
  } catch (error) {
    return refuse(
      'piece-file.not-written',
      `The file could not be written (${(error as Error).message}).`,
      'to',
    );
  }
  const { bytes } = await factsOf(to);
  const originals = photos.contents.filter(({ path }) => path.startsWith('photos/')).length;
  return done({ bytes, acts: events.length, photos: originals, missing: photos.missing });
}

function readPiece(
  file: string,
  id: string,
): Outcome<{ piece: Piece; events: RecordedEvent[]; recordId: string }> {
  const log = sqliteLog(file, { readOnly: true });
  try {
    const kept = log.ofPiece(id);
    const opened = kept[0]?.event.kind === 'piece-opened';
    if (!opened)
      return refuse(
        'piece-file.no-piece',
        `There is no piece “${id.slice(0, 80)}” of one’s own in this record; a worked example is first made one’s own.`,
        'piece',
      );
    const { document } = stateAfterAll(kept);
    const piece = pieceSchema.safeParse(document);
    if (!piece.success)
      return refuse(
        'piece-file.not-a-piece',
        `The acts on ${id} do not come to a piece this program can read.`,
        'piece',
      );
    return done({ piece: piece.data, events: kept.map((one) => one.event), recordId: log.recordId });
  } finally {
    log.close();
  }
}

/** The originals of every photo the piece names or named, and a picture of each that a browser can show. */
async function photoContents(dataDir: string, events: readonly RecordedEvent[]) {
  const all = new Set(
    events.flatMap((event) =>
      [...JSON.stringify(event.changes).matchAll(/"sha256":"([0-9a-f]{64})"/g)].map(
        (match) => match[1] ?? '',
      ),
    ),
  );
  const contents: Content[] = [];
  const missing: string[] = [];
  const paths = photoPaths(dataDir);
  for (const sha of [...all].sort()) {
    const mediaType = await mediaTypeOf(paths.original(sha));
    if (mediaType === undefined) {
      missing.push(sha);
      continue;
    }
    contents.push({ path: `photos/${sha}.${endings[mediaType]}`, from: paths.original(sha) });
    if (!shownByBrowsers.has(mediaType) && existsSync(paths.shown(sha, 'view')))
      contents.push({ path: `shown/${sha}.jpg`, from: paths.shown(sha, 'view') });
  }
  return { contents, missing };
}

/** What a photo's bytes say it is; undefined where it is not there or is none. */
async function mediaTypeOf(path: string): Promise<MediaType | undefined> {
  const file = await open(path, 'r').catch(() => undefined);
  if (file === undefined) return undefined;
  const head = Buffer.alloc(64);
  await file.read(head, 0, 64, 0).finally(() => file.close());
  return sniffMediaType(head);
}

async function issuedContents(dataDir: string, piece: string): Promise<Content[]> {
  const folder = join(dataDir, 'issued', piece);
  const names: string[] = await readdir(folder, { recursive: true }).catch(() => []);
  return names
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => /^[1-9]\d*\/[a-z][a-z0-9-]*\.(pdf|json)$/.test(name))
    .sort()
    .map((name) => ({ path: `issued/${name}`, from: join(folder, name) }));
}

/** Signs of one's own that the piece has findings of, and the shop files of one's own, which every weighing reads. */
async function ownEntries(dataDir: string, piece: Piece): Promise<{ signs: unknown[]; shops: unknown[] }> {
  const text = await readFile(join(dataDir, 'own-knowledge', 'own.yaml'), 'utf8').catch(() => '');
  const state = (parse(text) ?? {}) as { signs?: { id: string }[]; shops?: unknown[] };
  const used = new Set(Object.values(piece.findings).map(({ sign }) => sign));
  return { signs: (state.signs ?? []).filter(({ id }) => used.has(id)), shops: state.shops ?? [] };
}

/** Written beside its place and given its name when whole and flushed. */
async function writeZip(
  to: string,
  contents: readonly Content[],
  about: Omit<PieceFileManifest, 'files'>,
): Promise<void> {
  const files = await Promise.all(
    contents.map(async ({ path, from }) => ({ path, ...(await contentFacts(from)) })),
  );
  const zip = new ZipFile();
  zip.addBuffer(Buffer.from(pieceManifestText({ ...about, files })), manifestName);
  for (const { path, from } of contents) {
    // Pictures are packed already: packing them again costs time and saves nothing.
    const compress = !/\.(jpg|png|webp|heic|pdf)$/.test(path);
    if (typeof from === 'string') zip.addFile(from, path, { compress });
    else zip.addBuffer(from, path, { compress });
  }
  zip.end();
  const waiting = `${to}.unfinished`;
  try {
    await pipeline(zip.outputStream, createWriteStream(waiting, { mode: 0o600 }));
    await syncFile(waiting);
    await rename(waiting, to);
  } catch (error) {
    await rm(waiting, { force: true });
    throw error;
  }
}

async function contentFacts(from: string | Buffer): Promise<{ sha256: string; bytes: number }> {
  if (typeof from === 'string') return factsOf(from);
  return { sha256: createHash('sha256').update(from).digest('hex'), bytes: from.length };
}
