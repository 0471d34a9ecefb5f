import type { FormPart, Knowledge } from '../../knowledge/schema.ts';
import type { Piece } from '../../piece/piece.ts';
import type { PhotoUploads } from './photos/usePhotoUploads.ts';
import type { Recorder } from './recorder.ts';

/** What every tab of the examination leans on. */
export type ExaminationContext = {
  piece: Piece;
  readOnly: boolean;
  knowledge: Knowledge;
  /** The parts this piece has, as its form and features list them. */
  parts: FormPart[];
  record: Recorder;
  uploads: PhotoUploads;
};
