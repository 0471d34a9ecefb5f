import { caseFromPiece } from '../evidence/caseFromPiece.ts';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import type { PreparedCase } from '../evidence/preparedCase.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { Piece } from '../piece/piece.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import { readingsLeft, type SettledBy } from '../piece/settlement.ts';

/** A case whose answer is known on other grounds than its findings. */
export type SettledCase = {
  /** The id of its piece. */
  piece: string;
  /** The day it was settled. */
  on: string;
  /** The readings that the verdict leaves. */
  verdict: readonly ReadingId[];
  weight: number;
  /** Its findings, without those that the verdict rests on: they can't bear themselves out. */
  found: CaseToWeigh;
};

/** What a verdict counts for by what it rests on: another expert may err as the first did. */
export const weightOf: Readonly<Record<SettledBy, number>> = {
  document: 1,
  laboratory: 1,
  'second-expert': 0.5,
};

/**
 * The settled case of a piece; undefined where it is not settled, where the verdict leaves every reading open, or where the piece
 * is an example that comes with the program.
 */
export function settledCase(piece: Piece): SettledCase | undefined {
  const { settled } = piece;
  if (settled === undefined || piece.example) return undefined;
  const verdict = readingsLeft(settled);
  if (verdict.length === readingIds.length) return undefined;
  const rests = new Set(settled.rests);
  const findings = Object.fromEntries(Object.entries(piece.findings).filter(([key]) => !rests.has(key)));
  return {
    piece: piece.id,
    on: settled.on,
    verdict,
    weight: weightOf[settled.by],
    found: caseFromPiece({ ...piece, findings }),
  };
}

/** Settled cases in the order they were settled; those of one day by their ids. */
export function inOrder(cases: readonly SettledCase[]): SettledCase[] {
  const key = ({ on, piece }: SettledCase) => `${on} ${piece}`;
  return [...cases].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

/** A settled case with its ids looked up; undefined where the knowledge has no such form. */
export function preparedCaseOf(
  { found }: SettledCase,
  knowledge: Knowledge,
  yearNow: number,
): PreparedCase | undefined {
  const ready = prepareCase(found, knowledge, yearNow);
  return ready.ok ? ready.prepared : undefined;
}
