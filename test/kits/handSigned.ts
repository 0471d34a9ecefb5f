import { join } from 'node:path';
import { contentsHash } from '../../src/opinion/contentsHash.ts';
import { type CheckLine, withCheckLine } from '../../src/opinion/pdf/checkLine.ts';
import type { Json } from '../../src/piece/event.ts';
import type { IssuedRevision } from '../../src/piece/issued.ts';
import { sha256Of, writeRevision } from '../../src/record/issuedFolder.ts';
import type { RecordHead } from '../../src/record/recordHead.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { act, finding, opening } from './drafts.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** What a revision made by hand may say that is not so. */
export type Lies = { line?: Partial<CheckLine>; manifest?: object; revision?: Partial<IssuedRevision> };

/** The files of one revision of the piece “one”, typed here instead of set, and what the record says of them. */
export function signedFiles(document: Json | undefined, head: RecordHead, record: string, lies: Lies = {}) {
  const files = new Map<string, Buffer>(
    Object.entries({
      'piece.json': JSON.stringify(document ?? null),
      'case.json': '{"form":"side-chair"}',
      'weighing.json': '{}',
      'knowledge.json': '{"signs":[]}',
      'photos.json': '[]',
      'opinion.json': '{"title":"Opinion"}',
    }).map(([name, text]) => [name, Buffer.from(text)]),
  );
  const contents = contentsHash(files);
  const line = { piece: 'one', revision: 1, record, head: head.hash, count: head.count, contents };
  const blank = Buffer.from('%PDF-1.7\nA side chair.\nstartxref\n0\n%%EOF\n');
  const pdf = Buffer.from(withCheckLine(blank, { ...line, ...lies.line }));
  files.set('opinion.pdf', pdf);
  const hashes = Object.fromEntries([...files].map(([name, bytes]) => [name, sha256Of(bytes)]));
  const manifest = Buffer.from(
    JSON.stringify({ recordId: record, contents, files: hashes, ...lies.manifest }),
  );
  files.set('manifest.json', manifest);
  const issued: IssuedRevision = {
    revision: 1,
    by: 'Perrin Halloway (invented)',
    on: '2026-11-25',
    at: '2026-11-25T10:00:00.000+01:00',
    isNew: '',
    why: '',
    manifestSha256: sha256Of(manifest),
    pdfSha256: sha256Of(pdf),
    documentSha256: sha256Of(files.get('opinion.json') as Buffer),
    knowledgeSha256: sha256Of(files.get('knowledge.json') as Buffer),
    head: head.hash,
    count: head.count,
    programVersion: '0.0.0-test',
    knowledgeVersion: 'small',
    ...lies.revision,
  };
  return { files, issued, pdf, line };
}

/**
 * A data folder with the piece “one” after two acts of two devices, another piece opened between them, and one signed revision of it,
 * nothing of it set or weighed:
 * made in milliseconds, for what looks at hashes alone.
 *
 * @param record  the id of the record that the revision says it was signed in; this one's where left out
 */
export async function handSigned(lies: Lies = {}, record?: string) {
  const dir = await temporaryFolder();
  const log = sqliteLog(join(dir, 'record.db'));
  const store = createStore(log);
  store.append([opening('one'), opening('two'), finding('one', 'a', 'splat', { device: 'laptop' })]);
  const made = signedFiles(store.document('one'), store.head(), record ?? store.recordId, lies);
  await writeRevision(dir, 'one', made.issued.revision, made.files);
  const signed = store.issue(
    act('one', 'opinion-issued', [
      { path: ['opinion', 'status'], to: 'signed' },
      { path: ['issued', String(made.issued.revision)], to: made.issued },
    ]),
    3,
  );
  if (!signed.ok) throw new Error(JSON.stringify(signed.faults));
  const acts = ['one', 'two'].flatMap((piece) => log.ofPiece(piece)).sort((a, b) => a.position - b.position);
  const { recordId } = store;
  log.close();
  return { dir, acts, recordId, ...made };
}
