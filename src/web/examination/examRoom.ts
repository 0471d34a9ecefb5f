import type { FormPart, Knowledge } from '../../knowledge/schema.ts';
import type { Piece } from '../../piece/piece.ts';
import type { PhotoUploads } from './photos/usePhotoUploads.ts';
import type { Recorder } from './recorder.ts';

/** What every corner of the examination leans on. */
export type ExamRoom = {
  piece: Piece;
  readOnly: boolean;
  knowledge: Knowledge;
  /** The parts this piece has, as its form and features list them. */
  parts: FormPart[];
  record: Recorder;
  uploads: PhotoUploads;
};

/** The name of a part, or of the whole. */
export function partName(parts: readonly FormPart[], id: string | null | undefined): string {
  if (id === null || id === undefined) return 'the whole piece';
  return parts.find((part) => part.id === id)?.name ?? id;
}

/** With a capital at the start of a line. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
