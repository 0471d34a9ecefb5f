import type { Piece } from './piece.ts';

/** Whether anything was recorded of a piece that can be weighed: a finding, an observation, or that it was looked over. */
export function hasEvidence(piece: Pick<Piece, 'findings' | 'observations' | 'lookedOver'>): boolean {
  return (
    Object.keys(piece.findings).length > 0 || Object.keys(piece.observations).length > 0 || piece.lookedOver
  );
}
