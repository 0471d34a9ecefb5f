import type { Piece } from '../piece/piece.ts';
import type { KnownOfPiece } from './canApply.ts';

/** What a piece's record says of its features and of how its parts are made. */
export function knownOfPiece({ features, parts }: Pick<Piece, 'features' | 'parts'>): KnownOfPiece {
  return {
    features,
    makes: Object.fromEntries(Object.values(parts).map(({ id, makes }) => [id, makes])),
  };
}
