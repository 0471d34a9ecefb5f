import type { PartMake } from '../piece/partMake.ts';
import type { KnownOfPiece } from './canApply.ts';

/** What was said of a piece's features and of how its parts are made, for the conditions of signs. */
export function knownOfPiece(
  features: Readonly<Record<string, string>> = {},
  parts: readonly { id: string; makes?: Partial<Record<PartMake, boolean>> | undefined }[] = [],
): KnownOfPiece {
  return { features, makes: Object.fromEntries(parts.map(({ id, makes = {} }) => [id, makes])) };
}
