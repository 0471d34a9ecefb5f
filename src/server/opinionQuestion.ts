import type { PaperForm, PaperKind } from '../engagement/papers.ts';
import type { IssuedFiles, IssueOf } from '../opinion/setIssued.ts';
import type { OpinionOf } from '../opinion/setOpinion.ts';
import type { Piece } from '../piece/piece.ts';
import type { PrintablePicture } from '../record/printablePictures.ts';
import type { JobStep } from './jobs.ts';

/** An opinion asked of the thread that sets it: a draft, or with `issue` all files of a revision. */
export type OpinionQuestion = Pick<OpinionOf, 'piece' | 'yearNow' | 'madeOn'> & {
  plates: readonly PlateOf[];
  /** Which paper, and how it is handed out; the full report as PDF when left out. */
  paper?: PaperKind;
  as?: PaperForm;
  issue?: Pick<IssueOf, 'document' | 'photos' | 'head'>;
};

/** The PDF of a draft, or a revision's files. */
export type OpinionAnswer = Uint8Array | IssuedFiles;

/** Where the picture of a plate is, by the photo's id, and the hash its bytes come to. */
export type PlateOf = { id: string } & PrintablePicture;

/** Which paper is asked for, and how it is handed out; the full report as PDF when left out. */
export type PaperAsked = { paper?: PaperKind | undefined; as?: PaperForm | undefined };

/** Sets a paper of a piece, as it stands now, as a draft. */
export type SetOpinion = (
  piece: Piece,
  onStep: (step: JobStep) => void,
  asked?: PaperAsked,
) => Promise<Uint8Array>;
