import { type Piece, piece } from '../../../src/piece/piece.ts';
import type { TestServer } from './startServer.ts';

/** What the record holds of a piece, asked again until it is as wanted; the last answer if it never is. */
export async function pieceOf(
  server: TestServer,
  id: string,
  isSo: (piece: Piece) => boolean = () => true,
): Promise<Piece> {
  for (let tries = 0; ; tries += 1) {
    const answer = await fetch(`${server.address}api/pieces/${id}`);
    const found = piece.parse(((await answer.json()) as { piece: unknown }).piece);
    if (isSo(found) || tries > 100) return found;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}
