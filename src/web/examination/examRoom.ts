import type { FormPart, Knowledge } from '../../knowledge/schema.ts';
import type { EventKind } from '../../piece/event.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Act } from './answerSign.ts';
import type { PhotoUploads } from './photos/usePhotoUploads.ts';

/** Records an act on the piece; a void act (nothing to change) is not recorded. */
export type Recorder = (act: Act) => void;

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

/** The recorder over the piece's own record. */
export function recorderOf(
  record: (kind: EventKind, changes: Act['changes']) => void,
  readOnly: boolean,
): Recorder {
  return (act) => {
    if (!readOnly && act.changes.length > 0) record(act.kind, act.changes);
  };
}

/** The name of a part, or of the whole. */
export function partName(parts: readonly FormPart[], id: string | null | undefined): string {
  if (id === null || id === undefined) return 'the whole piece';
  return parts.find((part) => part.id === id)?.name ?? id;
}

/** With a capital at the start of a line. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
