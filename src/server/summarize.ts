import type { Piece } from '../piece/piece.ts';
import { DamagedPiece } from '../record/damagedPiece.ts';
import type { RecordStore } from '../record/store.ts';

/** One line of the list of pieces. */
export type PieceSummary = Pick<Piece, 'id' | 'title' | 'form' | 'example' | 'putAway' | 'mode'> & {
  status: Piece['opinion']['status'];
  updatedAt: string | undefined;
  openedOn: string | undefined;
  findings: number;
  photos: number;
  client: string;
  maker: string | undefined;
  period: [number, number] | undefined;
};

/** A piece that can't be read, and why, in words. */
export type DamagedSummary = { id: string; message: string };

/** All pieces of a record in short, the one worked on last first, examples after; and those that can't be read. */
export async function summarizePieces(
  store: RecordStore,
): Promise<{ pieces: PieceSummary[]; damaged: DamagedSummary[] }> {
  const lines: PieceSummary[] = [];
  const damaged: DamagedSummary[] = [];
  for (const id of store.pieces()) {
    try {
      await store.load(id);
      const view = store.piece(id);
      if (view !== undefined) lines.push(summarize(view.piece, store.times(id)));
    } catch (error) {
      if (!(error instanceof DamagedPiece)) throw error;
      damaged.push({ id, message: error.message });
    }
  }
  const pieces = lines.sort(
    (a, b) => Number(a.example) - Number(b.example) || moment(b) - moment(a) || (a.id < b.id ? -1 : 1),
  );
  return { pieces, damaged };
}

function summarize(piece: Piece, times: ReturnType<RecordStore['times']>): PieceSummary {
  const { id, title, form, example, putAway, mode, opinion, claim, engagement } = piece;
  return {
    id,
    title,
    form,
    example,
    putAway,
    mode,
    status: opinion.status,
    updatedAt: times.lastAt,
    openedOn: piece.openedOn ?? times.firstAt?.slice(0, 10),
    findings: Object.keys(piece.findings).length,
    photos: Object.keys(piece.photos).length,
    client: engagement.client,
    maker: claim.maker,
    period: claim.period,
  };
}

function moment(line: PieceSummary): number {
  return line.updatedAt === undefined ? 0 : Date.parse(line.updatedAt);
}
