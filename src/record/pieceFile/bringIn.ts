import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import type { Json, RecordedEvent } from '../../piece/event.ts';
import { foldEvents } from '../../piece/fold.ts';
import type { ForeignActs } from '../adoptActs.ts';
import { factsOf, syncFile, syncFolder } from '../backup/durableFiles.ts';
import { besideActs, besideId } from '../besideActs.ts';
import type { OwnEntry, OwnKnowledge } from '../ownKnowledge.ts';
import type { PhotoFolder } from '../photos.ts';
import type { RecordStore } from '../store.ts';
import { issuedBy, revisionFaults } from '../verifyIssued.ts';
import { readPieceFile, type UnpackedPiece } from './readPieceFile.ts';

/** The record that a piece is brought into. */
export type BringInParts = { dataDir: string; store: RecordStore; photos: PhotoFolder; own: OwnKnowledge };

/** What came of it. `piece` is its name here; `remarks` are told to the user. */
export type BroughtIn = { piece: string; added: number; known: number; photos: number; remarks: string[] };

/**
 * Brings the file of a piece into a record: a union by the ids of its acts, so that twice is harmless. All is checked
 * before anything is kept; photos and issued revisions come before the acts that name them.
 *
 * @param folder  for unpacking: not there yet, removed at the end
 * @param beside  as a piece of its own beside the one of its name, where the two can't be put together
 */
export async function bringInPiece(
  file: string,
  folder: string,
  parts: BringInParts,
  beside = false,
): Promise<Outcome<BroughtIn>> {
  const unpacked = await readPieceFile(file, folder);
  if (!unpacked.ok) return unpacked;
  try {
    return await bringInUnpacked(unpacked.value, parts, beside);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function bringInUnpacked(
  { manifest, folder }: UnpackedPiece,
  { dataDir, store, photos, own }: BringInParts,
  beside: boolean,
): Promise<Outcome<BroughtIn>> {
  const acts = readLines(await readFile(join(folder, 'acts.jsonl'), 'utf8'));
  const revisions = await revisionsIn(folder);
  if (acts?.length !== manifest.acts || !revisions.ok)
    return refuse(
      'piece-file.damaged',
      'The acts or the signed revisions of this file can’t be read.',
      'file',
    );
  if (beside && revisions.value.size > 0)
    return refuse(
      'piece-file.signed-beside',
      'This piece has signed revisions, which belong to its own name: bring it into a data folder of its own (--data) and compare the two there.',
      'file',
    );
  const piece = beside ? besideId(manifest.piece, manifest.recordId) : manifest.piece;
  const foreign: ForeignActs = {
    piece,
    record: manifest.recordId,
    acts,
    issued: revisions.value,
    ...(beside
      ? { renamed: (read: readonly RecordedEvent[]) => besideActs(read, piece), was: manifest.piece }
      : {}),
  };
  const would = store.adopt(foreign, true);
  if (!would.ok) return would;
  const whole = await revisionsAreWhole(folder, piece, acts as RecordedEvent[]);
  if (!whole.ok) return whole;
  const kept = await keepPhotos(folder, photos);
  if (!kept.ok) return kept;
  const issued = await keepRevisions(folder, dataDir, piece, [...revisions.value.keys()]);
  if (!issued.ok) return issued;
  const remarks = [...would.value.remarks, ...(await keepOwn(folder, own))];
  if (manifest.missing.length > 0)
    remarks.push(
      `${manifest.missing.length} photos were not there when the piece was taken out, and lack here too.`,
    );
  const adopted = store.adopt(foreign, false);
  if (!adopted.ok) return adopted;
  const { added, known } = adopted.value;
  return done({ piece, added, known, photos: kept.value, remarks });
}

function readLines(text: string): unknown[] | undefined {
  try {
    return text
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => JSON.parse(line));
  } catch {
    return undefined;
  }
}

/** Whether each revision in the file is as its act says it was signed, to the last of its files. */
async function revisionsAreWhole(
  folder: string,
  piece: string,
  acts: readonly RecordedEvent[],
): Promise<Outcome<undefined>> {
  let document: Json | undefined;
  for (const act of acts) {
    const before = document;
    document = foldEvents(before, [act]);
    const issued = issuedBy(act);
    if (issued === undefined) continue;
    const read = (name: string) =>
      readFile(join(folder, 'issued', String(issued.revision), name)).catch(() => undefined);
    const [fault] = await revisionFaults(read, piece, issued, before);
    if (fault !== undefined)
      return refuse(
        'piece-file.revision',
        `Revision ${issued.revision} in this file is not as it was signed, so nothing was brought in. ${fault}`,
        'file',
      );
  }
  return done(undefined);
}

/** The SHA-256 of each revision's list of files. */
async function revisionsIn(folder: string): Promise<Outcome<Map<string, string>>> {
  const found = new Map<string, string>();
  for (const revision of await readdir(join(folder, 'issued')).catch(() => [] as string[])) {
    const at = join(folder, 'issued', revision);
    const text = await readFile(join(at, 'manifest.json'), 'utf8').catch(() => undefined);
    if (text === undefined)
      return refuse('piece-file.revision', `Revision ${revision} has no list of its files.`);
    found.set(revision, createHash('sha256').update(text).digest('hex'));
  }
  return done(found);
}

async function keepPhotos(folder: string, photos: PhotoFolder): Promise<Outcome<number>> {
  const names = await readdir(join(folder, 'photos')).catch(() => [] as string[]);
  let kept = 0;
  for (const name of names) {
    const sha = name.slice(0, 64);
    const put = await photos.put(sha, createReadStream(join(folder, 'photos', name)));
    if (!put.ok) return put;
    kept++;
  }
  return done(kept);
}

/** Revisions are never written over: one that is here already must be the same, byte for byte. */
async function keepRevisions(
  folder: string,
  dataDir: string,
  piece: string,
  revisions: readonly string[],
): Promise<Outcome<undefined>> {
  for (const revision of revisions) {
    const from = join(folder, 'issued', revision);
    const to = join(dataDir, 'issued', piece, revision);
    const list = async (at: string) => (await factsOf(join(at, 'manifest.json'))).sha256;
    if (existsSync(to)) {
      if ((await list(to)) === (await list(from))) continue;
      return refuse(
        'piece-file.other-revision',
        `Revision ${revision} was signed in both records, and differs. Nothing was brought in: bring the file into a data folder of its own (--data) and compare the two there.`,
        'file',
      );
    }
    const coming = `${to}.unfinished`;
    await rm(coming, { recursive: true, force: true });
    await mkdir(dirname(to), { recursive: true, mode: 0o700 });
    await cp(from, coming, { recursive: true });
    for (const name of await readdir(coming)) await syncFile(join(coming, name));
    await rename(coming, to);
    await syncFolder(dirname(to));
  }
  return done(undefined);
}

/** Entries of the other's own are added where there is none of their id; one that differs stays as it is here, and is told. */
async function keepOwn(folder: string, own: OwnKnowledge): Promise<string[]> {
  const text = await readFile(join(folder, 'own-knowledge.json'), 'utf8').catch(() => '{}');
  const state = JSON.parse(text) as { signs?: OwnEntry[]; shops?: OwnEntry[] };
  const remarks: string[] = [];
  for (const [kind, entries] of [
    ['sign', state.signs ?? []],
    ['shop', state.shops ?? []],
  ] as const) {
    for (const entry of entries) {
      const here = own.list()[`${kind}s`].find((one) => one.id === entry.id);
      if (here !== undefined) {
        if (JSON.stringify(here) !== JSON.stringify(entry))
          remarks.push(
            `The ${kind} of one’s own “${String(entry.id)}” says something else here: it stays as it is.`,
          );
        continue;
      }
      const put = own.put(kind, entry);
      if (!put.ok)
        remarks.push(
          `The ${kind} of one’s own “${String(entry.id).slice(0, 60)}” could not be added: ${put.faults.map(({ message }) => message).join(' ')}`,
        );
    }
  }
  return remarks;
}
