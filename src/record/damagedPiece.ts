/** A piece whose acts can't be read, or come to none that this program knows: the others are not touched by it. */
export class DamagedPiece extends Error {
  constructor(
    readonly piece: string,
    reason: unknown,
  ) {
    super(
      `The piece “${piece}” can’t be shown: an act on it is damaged, or was written by a newer Underside. All else goes on. Run npx underside verify to see which act it is, and bring the piece back from a back-up.`,
      { cause: reason },
    );
    this.name = 'DamagedPiece';
  }
}

/** Reads a piece; what goes wrong on the way comes out as a DamagedPiece. */
export function readingPiece<Value>(piece: string, work: () => Value): Value {
  try {
    return work();
  } catch (error) {
    throw error instanceof DamagedPiece ? error : new DamagedPiece(piece, error);
  }
}
