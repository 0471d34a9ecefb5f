import type { FormPart } from '../../knowledge/schema.ts';

/** The name of a part, or of the whole. */
export function partName(parts: readonly FormPart[], id: string | null | undefined): string {
  if (id === null || id === undefined) return 'the whole piece';
  return parts.find((part) => part.id === id)?.name ?? id;
}
