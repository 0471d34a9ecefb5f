import type { Fault } from '../ground/fault.ts';
import { contentsHash } from '../opinion/contentsHash.ts';
import { checkFile } from '../opinion/pdf/checkLine.ts';
import type { Json, RecordedEvent } from '../piece/event.ts';
import { foldEvents } from '../piece/fold.ts';
import { type IssuedRevision, issuedRevision } from '../piece/issued.ts';
import { canonicalJson } from './canonicalJson.ts';
import { foldersOfRevisions, readRevisionFile, sha256Of } from './issuedFolder.ts';
import { type DeviceHead, recordHead } from './recordHead.ts';

/** An act with its place in the whole record. */
export type PlacedAct = { position: number; event: RecordedEvent };

/** What a check of the signed revisions found. */
export type IssuedCheck = { revisions: number; faults: Fault[]; remarks: string[] };

/**
 * Whether every signed revision is as it was signed: its files by their hashes, the piece in it against what the acts
 * before the signing come to, and the head it was printed with against the chain as it is.
 *
 * Who can rewrite the whole folder, chain and files alike, is found by none of this, only by the head and the hash that
 * stand in a copy somebody else has.
 *
 * @param acts      all acts of the record, in the order of their places
 * @param recordId  the record's own id
 */
export async function checkIssued(
  dir: string,
  acts: readonly PlacedAct[],
  recordId: string,
): Promise<IssuedCheck> {
  const found: IssuedCheck = { revisions: 0, faults: [], remarks: [] };
  const documents = new Map<string, Json | undefined>();
  const signed = new Set<string>();
  for (const { event } of acts) {
    const before = documents.get(event.piece);
    documents.set(event.piece, foldEvents(before, [event]));
    const issued = issuedBy(event);
    if (issued === undefined) continue;
    signed.add(`${event.piece}/${issued.revision}`);
    found.revisions += 1;
    const read = (name: string) => readRevisionFile(dir, event.piece, issued.revision, name);
    const faults = await revisionFaults(read, event.piece, issued, before);
    const manifest = await manifestOf(read, issued);
    const elsewhere = manifest !== undefined && manifest.recordId !== recordId;
    if (!elsewhere && headAt(acts, issued.count) !== issued.head)
      faults.push(
        'The record does not hold the acts it held when this revision was signed: some were changed, removed or put in.',
      );
    const path = `issued/${event.piece}/${issued.revision}`;
    found.faults.push(...faults.map((message) => ({ code: 'verify.revision-changed', path, message })));
    if (elsewhere)
      found.remarks.push(
        `Revision ${issued.revision} of ${event.piece} was signed in another record (${manifest.recordId}): only there can its head be compared.`,
      );
  }
  for (const { piece, revision } of await foldersOfRevisions(dir))
    if (!signed.has(`${piece}/${revision}`))
      found.remarks.push(
        `issued/${piece}/${revision} was never signed: the program stopped before it was, and nothing speaks of it.`,
      );
  return found;
}

/** What the head of a record was when it held its first `count` acts, or undefined where it never held so many. */
export function headAt(acts: readonly PlacedAct[], count: number): string | undefined {
  if (acts.length < count) return undefined;
  const heads = new Map<string, DeviceHead>();
  for (const { event } of acts.slice(0, count)) heads.set(event.device, event);
  return recordHead([...heads.values()], count).hash;
}

/** The revision that an act signed, or undefined where it signed none. */
export function issuedBy(event: Pick<RecordedEvent, 'kind' | 'changes'>): IssuedRevision | undefined {
  if (event.kind !== 'opinion-issued') return undefined;
  return issuedRevision.safeParse(event.changes.find(({ path }) => path[0] === 'issued')?.to).data;
}

type Manifest = { recordId: string; contents: string; files: Record<string, string> };

/** Reads a file of one revision by its name, wherever the revision lies. */
type ReadFile = (name: string) => Promise<Buffer | undefined>;

async function manifestOf(read: ReadFile, issued: IssuedRevision): Promise<Manifest | undefined> {
  const bytes = await read('manifest.json');
  if (bytes === undefined || sha256Of(bytes) !== issued.manifestSha256) return undefined;
  return JSON.parse(bytes.toString()) as Manifest;
}

/**
 * What is wrong with the files of one revision, in words.
 *
 * @param before  what the acts before the signing come to
 */
export async function revisionFaults(
  read: ReadFile,
  piece: string,
  issued: IssuedRevision,
  before: Json | undefined,
): Promise<string[]> {
  const manifest = await manifestOf(read, issued);
  if (manifest === undefined) return ['Its list of files (manifest.json) is not there as it was signed.'];
  const files = new Map<string, Uint8Array>();
  const faults: string[] = [];
  for (const [name, sha256] of Object.entries(manifest.files)) {
    const bytes = await read(name);
    if (bytes === undefined) faults.push(`Its file ${name} is not there.`);
    else if (sha256Of(bytes) !== sha256)
      faults.push(`Its file ${name} is not the one that was signed: its bytes differ.`);
    else files.set(name, bytes);
  }
  if (faults.length > 0) return faults;
  const { 'opinion.pdf': pdf, 'opinion.json': document, 'knowledge.json': knowledge } = manifest.files;
  const agrees = (is: boolean, words: string) => (is ? [] : [words]);
  const line = checkFile(files.get('opinion.pdf') ?? new Uint8Array());
  const stored = JSON.parse(Buffer.from(files.get('piece.json') ?? []).toString() || 'null');
  return [
    ...agrees(
      pdf === issued.pdfSha256 && document === issued.documentSha256 && knowledge === issued.knowledgeSha256,
      'Its list of files and the record speak of different files.',
    ),
    ...agrees(
      canonicalJson(stored) === canonicalJson(before ?? null),
      'The piece in it is not what the acts before the signing come to.',
    ),
    ...agrees(
      contentsHash(files) === manifest.contents,
      'The hash of what it rests on is not the one in its list of files.',
    ),
    ...agrees(
      line?.whole === true &&
        line.line.piece === piece &&
        line.line.revision === issued.revision &&
        line.line.head === issued.head &&
        line.line.count === issued.count &&
        line.line.contents === manifest.contents,
      'What its PDF says of itself is not what the record says of it.',
    ),
  ];
}
