import { caseFromPiece } from '../evidence/caseFromPiece.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { comparePieces, type PieceComparison } from '../piece/comparePieces.ts';
import { hasEvidence } from '../piece/hasEvidence.ts';
import type { IssuedRevision } from '../piece/issued.ts';
import { type Piece, piece as pieceSchema } from '../piece/piece.ts';
import type { ReadingId } from '../piece/readings.ts';
import { readRevisionFile, sha256Of } from '../record/issuedFolder.ts';
import type { RecordStore } from '../record/store.ts';
import type { Weighing } from '../weighing/weighing.ts';
import type { Calculate } from './calculationRoutes.ts';
import { areMoved, bothReadings, type ReadingThenAndNow } from './readingsThenAndNow.ts';

/** A version then and now. */
type Moved = { was: string; now: string; changed: boolean };

/** How a piece, and what it is weighed with, differ from a revision that was signed. */
export type Difference = {
  piece: PieceComparison;
  /** How many acts came after it. */
  acts: number;
  program: Moved;
  knowledge: Moved;
  /** Whether the signed findings, weighed by the program and knowledge of now, come to other readings or years than were signed. */
  readingsMoved: boolean;
};

/** The figures of a revision beside those of the piece as it is, by the program and knowledge of now. */
export type ReadingsSince = {
  /** What each reading came to then, and comes to now; nothing where one of the two could not be weighed. */
  readings: readonly ReadingThenAndNow[];
  leading: { was: ReadingId | null; now: ReadingId | null };
  years: { was: readonly [number, number] | null; now: readonly [number, number] | null };
};

/** What a comparison leans on. */
export type DifferenceParts = {
  store: RecordStore;
  dataDir: string;
  calculate: Calculate;
  version: string;
  /** The knowledge as it is now, in the form in which a revision keeps it. */
  knowledgeNow: () => { version: string; sha256: string };
};

/**
 * Compares a piece with a revision of it, from the revision's stored files.
 *
 * @returns undefined where those files are gone or not those that were signed
 */
export async function differenceSince(
  parts: DifferenceParts,
  now: Piece,
  issued: IssuedRevision,
): Promise<Difference | undefined> {
  const stored = await storedRevision(parts.dataDir, now.id, issued);
  if (stored === undefined) return undefined;
  const { version, sha256 } = parts.knowledgeNow();
  const knowledge = {
    was: issued.knowledgeVersion,
    now: version,
    changed: sha256 !== issued.knowledgeSha256,
  };
  const program = {
    was: issued.programVersion,
    now: parts.version,
    changed: parts.version !== issued.programVersion,
  };
  const { readingsMoved } = await figuresOf(parts, stored, issued, sha256);
  const piece = comparePieces(stored.piece, now);
  return { piece, acts: actsAfter(parts.store, now.id, issued.revision), program, knowledge, readingsMoved };
}

/** What the piece as it is comes to, beside what was signed. */
export async function readingsSince(
  parts: DifferenceParts,
  now: Piece,
  issued: IssuedRevision,
): Promise<ReadingsSince | undefined> {
  const stored = await storedRevision(parts.dataDir, now.id, issued);
  if (stored === undefined) return undefined;
  const weighedNow = await weighed(parts.calculate, now, stored.yearNow);
  return {
    readings: bothReadings(stored.weighing, weighedNow),
    leading: { was: stored.weighing?.leading ?? null, now: weighedNow?.leading ?? null },
    years: { was: stored.weighing?.years.p90 ?? null, now: weighedNow?.years.p90 ?? null },
  };
}

/** The knowledge as it is now, by its version and by the SHA-256 of the text in which a revision keeps it. */
export function knowledgeStamp(
  knowledge: () => Knowledge,
  text: () => string,
): DifferenceParts['knowledgeNow'] {
  const last: { of?: Knowledge; sha256: string } = { sha256: '' };
  return () => {
    const now = knowledge();
    if (last.of !== now) Object.assign(last, { of: now, sha256: sha256Of(`${text()}\n`) });
    return { version: now.version, sha256: last.sha256 };
  };
}

const figures = new Map<string, Promise<{ readingsMoved: boolean }>>();

/** Whether the signed findings come to other readings now; weighed once for each state of the knowledge in a run. */
function figuresOf(parts: DifferenceParts, stored: Stored, issued: IssuedRevision, knowledge: string) {
  const key = `${issued.manifestSha256} ${knowledge}`;
  const known = figures.get(key);
  if (known !== undefined) return known;
  const asked = weighed(parts.calculate, stored.piece, stored.yearNow).then((now) => ({
    readingsMoved: now !== undefined && stored.weighing !== null && areMoved(stored.weighing, now),
  }));
  figures.set(key, asked);
  asked.catch(() => figures.delete(key));
  return asked;
}

type Stored = { piece: Piece; weighing: Weighing | null; yearNow: number };

async function storedRevision(
  dir: string,
  piece: string,
  issued: IssuedRevision,
): Promise<Stored | undefined> {
  const bytesOf = (name: string) => readRevisionFile(dir, piece, issued.revision, name);
  const manifest = await bytesOf('manifest.json');
  if (manifest === undefined || sha256Of(manifest) !== issued.manifestSha256) return undefined;
  const { files, yearNow } = JSON.parse(manifest.toString()) as {
    files: Record<string, string>;
    yearNow: number;
  };
  const [pieceBytes, weighingBytes] = await Promise.all([bytesOf('piece.json'), bytesOf('weighing.json')]);
  if (pieceBytes === undefined || sha256Of(pieceBytes) !== files['piece.json']) return undefined;
  if (weighingBytes === undefined || sha256Of(weighingBytes) !== files['weighing.json']) return undefined;
  const read = pieceSchema.safeParse(JSON.parse(pieceBytes.toString()));
  return read.success
    ? { piece: read.data, weighing: JSON.parse(weighingBytes.toString()) as Weighing | null, yearNow }
    : undefined;
}

/** The figures without redraws, by the year of the signing: only findings, knowledge and program can move them. */
async function weighed(calculate: Calculate, piece: Piece, yearNow: number): Promise<Weighing | undefined> {
  if (!hasEvidence(piece)) return undefined;
  const input = { ...caseFromPiece(piece), draws: 0, quick: true };
  const result = await calculate({ id: 'evidence.weigh', input, yearNow });
  return result.ok ? (result.output as Weighing) : undefined;
}

function actsAfter(store: RecordStore, id: string, revision: number): number {
  const events = store.history(id);
  const signing = events.findLastIndex(
    ({ kind, changes }) =>
      kind === 'opinion-issued' && changes.some(({ path }) => path.join('.') === `issued.${revision}`),
  );
  const quiet = new Set(['piece-put-away', 'revision-begun', 'opinion-issued']);
  return events.slice(signing + 1).filter(({ kind }) => !quiet.has(kind)).length;
}
