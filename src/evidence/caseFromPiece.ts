import type { Piece } from '../piece/piece.ts';
import type { CaseToWeigh } from './caseToWeigh.ts';

/** The case that a piece's record comes to: what is weighed is what was recorded, nothing else. */
export function caseFromPiece(piece: Piece): CaseToWeigh {
  return {
    form: piece.form,
    features: piece.features,
    claim: piece.claim,
    mode: piece.mode,
    ...(piece.startingOdds === undefined ? {} : { startingOdds: piece.startingOdds }),
    parts: Object.values(piece.parts).map(({ id, missing, woods, makes }) => ({ id, missing, woods, makes })),
    findings: Object.values(piece.findings).map(({ sign, part, state, sure, inPhotoOnly, measured }) => ({
      sign,
      ...(part === undefined ? {} : { part }),
      state,
      sure,
      inPhotoOnly,
      ...(measured === undefined ? {} : { likelihoods: measured.likelihoods }),
    })),
    observations: Object.values(piece.observations).map(({ id, words, expected }) => ({
      id,
      words,
      expected,
    })),
    lookedOver: piece.lookedOver,
    measures: Object.values(piece.measures).map(({ id, mm }) => ({ id, mm })),
  };
}
