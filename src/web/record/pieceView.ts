import { type Piece, piece as pieceSchema } from '../../piece/piece.ts';
import type { Act } from './act.ts';
import type { DeskState } from './desk.ts';
import { type Standing, standingAfter } from './standing.ts';

/** Whether what was entered is in the record, on its way, or waiting on this device until the record answers. */
export type Saving = 'saved' | 'saving' | 'waiting';

/** A piece as a screen sees it. */
export type PieceView = {
  state: 'loading' | 'ready' | 'missing';
  piece: Piece | undefined;
  readOnly: boolean;
  canUndo: boolean;
  canRedo: boolean;
  saving: Saving;
  /** How many acts on this piece wait. */
  waiting: number;
  /** False where this browser would lose waiting acts with the tab. */
  lasting: boolean;
  /** True while the record does not answer. */
  trouble: boolean;
  seq: number;
  /** What the record would not take, in words. */
  refusals: readonly string[];
};

/** What the desk holds of one piece. */
export type OpenPiece = {
  id: string;
  came: 'not-yet' | 'answer' | 'refusal';
  standing: Standing;
  seq: number;
  canUndo: boolean;
  canRedo: boolean;
  readOnly: boolean;
  refusals: readonly string[];
  listeners: Set<() => void>;
  view: PieceView;
};

/** A piece just asked for: nothing known of it yet. */
export function openPiece(id: string): OpenPiece {
  return {
    id,
    came: 'not-yet',
    standing: { document: undefined, done: [], undone: [] },
    seq: 0,
    canUndo: false,
    canRedo: false,
    readOnly: false,
    refusals: [],
    listeners: new Set(),
    view: {
      state: 'loading',
      piece: undefined,
      readOnly: false,
      canUndo: false,
      canRedo: false,
      saving: 'saved',
      waiting: 0,
      lasting: true,
      trouble: false,
      seq: 0,
      refusals: [],
    },
  };
}

/** What a screen shows of a piece with the given acts still to be handed in. */
export function viewOf(opened: OpenPiece, acts: readonly Act[], desk: DeskState): PieceView {
  const after = standingAfter(opened.standing, acts);
  const read = pieceSchema.safeParse(after.document);
  const state = read.success ? 'ready' : opened.came === 'not-yet' ? 'loading' : 'missing';
  const undoing = acts.filter((act) => act.type === 'undo').length;
  const newer = acts.some((act) => act.type === 'event');
  return {
    state,
    piece: read.success ? read.data : undefined,
    readOnly: opened.readOnly,
    canUndo: !opened.readOnly && (after.done.length > 0 || (opened.canUndo && undoing === 0)),
    canRedo: !opened.readOnly && (after.undone.length > 0 || (opened.canRedo && acts.length === 0 && !newer)),
    saving: acts.length === 0 ? 'saved' : desk.trouble ? 'waiting' : 'saving',
    waiting: acts.length,
    lasting: desk.lasting,
    trouble: desk.trouble,
    seq: opened.seq,
    refusals: opened.refusals,
  };
}
