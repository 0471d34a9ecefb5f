import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { missingForSigning } from '../engagement/missingForSigning.ts';
import type { Fault } from '../ground/fault.ts';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import type { BoundPhoto } from '../opinion/setIssued.ts';
import type { DraftEvent } from '../piece/event.ts';
import { type IssuedRevision, lastRevision } from '../piece/issued.ts';
import type { Piece } from '../piece/piece.ts';
import { setAside, sha256Of, writeRevision } from '../record/issuedFolder.ts';
import type { PhotoFolder } from '../record/photos.ts';
import type { PieceView, RecordStore } from '../record/store.ts';
import type { MakeRevision } from './askOpinion.ts';
import type { JobStep } from './jobs.ts';

/** Who signs what: `seq` is where the piece stood when its sheet was read, `id` makes asking twice harmless. */
export type IssueRequest = Pick<DraftEvent, 'id' | 'who' | 'device' | 'at'> & {
  piece: string;
  by: string;
  on: string;
  seq: number;
};

/** What issuing leans on. */
export type IssueParts = {
  store: RecordStore;
  photos: PhotoFolder;
  dataDir: string;
  makeRevision: MakeRevision;
  version: string;
  yearNow: () => number;
};

/** Whether a piece can be signed as it stands; the faults say what to do. */
export function canIssue(view: PieceView | undefined, request: IssueRequest): Outcome<PieceView> {
  if (view === undefined) return refuse('record.no-piece', 'There is no such piece in this record.');
  if (view.readOnly)
    return refuse(
      'record.example-is-read-only',
      'The worked examples stay as they are: make it yours to work on a copy.',
    );
  const { piece } = view;
  const last = lastRevision(piece);
  if (piece.opinion.status === 'signed')
    return refuse(
      'issue.signed-already',
      last === undefined
        ? 'This opinion is signed, from before revisions were kept: open it again as a draft first.'
        : `Revision ${last.revision} is signed: begin revision ${last.revision + 1} first.`,
    );
  if (view.seq !== request.seq)
    return refuse(
      'record.moved-on',
      'The piece was changed since this sheet was opened: look at it once more, and sign again.',
    );
  const faults: Fault[] = missingForSigning(piece)
    .filter(({ must }) => must)
    .map(({ id, words }) => ({
      code: 'issue.missing',
      path: id,
      message: `Before it can be signed: ${words}.`,
    }));
  return faults.length > 0 ? { ok: false, faults } : done(view);
}

/**
 * Signs a revision: makes its files, writes them safely, and only then records the act. A crash in between leaves files
 * that nothing speaks of, and no signature.
 *
 * @returns the PDF as it was stored
 * @throws Error with a sentence where nothing was signed
 */
export async function issueRevision(
  parts: IssueParts,
  view: PieceView,
  request: IssueRequest,
  onStep: (step: JobStep) => void,
): Promise<Uint8Array> {
  const { store, dataDir, version, yearNow } = parts;
  const { piece } = view;
  const before = lastRevision(piece);
  const revision = (before?.revision ?? 0) + 1;
  const head = store.head();
  const { isNew, why } = piece.opinion;
  const words = before === undefined ? { isNew: '', why: '' } : { isNew, why };
  const photos = await boundPhotos(piece, parts.photos);
  const document = store.document(piece.id);
  if (document === undefined) throw new Error('There is no such piece in this record.');
  const year = yearNow();
  const made = await parts.makeRevision(
    {
      piece,
      yearNow: year,
      madeOn: request.on,
      document,
      photos,
      head: {
        revision,
        by: request.by,
        on: request.on,
        ...words,
        ...(before === undefined ? {} : { before: { revision: before.revision, on: before.on } }),
        recordId: store.recordId,
        count: head.count,
        head: head.hash,
      },
    },
    onStep,
  );
  const hashes = Object.fromEntries([...made.files].map(([name, bytes]) => [name, sha256Of(bytes)]));
  const hashOf = (name: string) => hashes[name] ?? '';
  const said = {
    revision,
    by: request.by,
    on: request.on,
    at: request.at,
    ...words,
    head: head.hash,
    count: head.count,
    programVersion: version,
    knowledgeVersion: made.knowledgeVersion,
  };
  const manifest = Buffer.from(
    `${JSON.stringify({ format: 1, piece: piece.id, ...said, recordId: store.recordId, yearNow: year, contents: made.contents, files: hashes }, null, 1)}\n`,
  );
  const issued: IssuedRevision = {
    ...said,
    manifestSha256: sha256Of(manifest),
    pdfSha256: hashOf('opinion.pdf'),
    documentSha256: hashOf('opinion.json'),
    knowledgeSha256: hashOf('knowledge.json'),
  };
  await writeRevision(dataDir, piece.id, revision, new Map([...made.files, ['manifest.json', manifest]]));
  const kept = store.issue(actOf(issued, request), view.seq);
  if (!kept.ok) {
    await setAside(dataDir, piece.id, revision);
    throw new Error(kept.faults.map(({ message }) => message).join(' '));
  }
  return made.files.get('opinion.pdf') ?? new Uint8Array();
}

function actOf(issued: IssuedRevision, { id, piece, who, device, at }: IssueRequest): DraftEvent {
  return {
    id,
    piece,
    kind: 'opinion-issued',
    changes: [
      { path: ['issued', String(issued.revision)], to: issued },
      { path: ['opinion', 'status'], to: 'signed' },
      { path: ['opinion', 'signedBy'], to: issued.by },
      { path: ['opinion', 'signedOn'], to: issued.on },
    ],
    who,
    device,
    at,
  };
}

/** Every photo of the piece with the hash of its bytes taken anew: a signature binds what is there, not what was said. */
async function boundPhotos(piece: Piece, photos: PhotoFolder): Promise<BoundPhoto[]> {
  const bound: BoundPhoto[] = [];
  for (const { id, sha256, bytes, name, caption } of Object.values(piece.photos)) {
    const original = await photos.original(sha256);
    if (original === undefined || (await hashFile(original.path)) !== sha256)
      throw new Error(
        `The photo “${caption || name}” is not there as it was taken in: put its file back from a copy of the record, or remove it from this piece, then sign.`,
      );
    bound.push({ id, sha256, bytes });
  }
  return bound;
}

async function hashFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk);
  return hash.digest('hex');
}
