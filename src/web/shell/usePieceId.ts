import { useParams } from '@tanstack/react-router';

/** The id of the piece whose room this is. */
export function usePieceId(): string {
  const { id } = useParams({ strict: false });
  if (id === undefined) throw new Error('This room belongs to a piece, and the address names none.');
  return id;
}
