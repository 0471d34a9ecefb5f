import type { Overwritten } from '../../piece/overwritten.ts';
import { type Piece, piece as pieceSchema } from '../../piece/piece.ts';
import type { Act, ActMark, PieceAnswer } from './act.ts';
import type { DeskState } from './desk.ts';
import { type Standing, standingAfter } from './standing.ts';

/** Whether what was entered is in the record, on its way, or waiting on this device until the record answers. */
export type Saving = 'saved' | 'saving' | 'waiting';

/** A piece as a screen sees it. */
export type PieceView = {
  state: 'loading' | 'ready' | 'missing' | 'damaged';
  /** Why the piece can't be shown, where it is damaged. */
  damage: string;
  piece: Piece | undefined;
  readOnly: boolean;
  canUndo: boolean;
  canRedo: boolean;
  /** True where nothing can be taken back because a signature stands there. */
  undoStopsAtSignature: boolean;
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
  /** Values that were written over unseen, and wait for an examiner. */
  overwritten: readonly Overwritten[];
};

/** What the desk holds of one piece. */
export type OpenPiece = {
  id: string;
  came: 'not-yet' | 'answer' | 'refusal';
  /** What the record says of a piece that can't be read; empty where it can. */
  damage: string;
  standing: Standing;
  seq: number;
  /** How many acts the record had on the piece. */
  count: number;
  canUndo: boolean;
  canRedo: boolean;
  readOnly: boolean;
  undoStopsAt: PieceAnswer['undoStopsAt'];
  refusals: readonly string[];
  /** The acts that an undo and a redo would turn, as the record last told. */
  undoes: ActMark | undefined;
  redoes: ActMark | undefined;
  overwritten: readonly Overwritten[];
  /** True once the record has moved on by acts of others since this page last acted. */
  isMovedOn: boolean;
  /** The act of another hand that a person was asked about before taking it back. */
  asked: string | undefined;
  listeners: Set<() => void>;
  view: PieceView;
};

/** A piece just asked for: nothing known of it yet. */
export function openPiece(id: string): OpenPiece {
  return {
    id,
    came: 'not-yet',
    damage: '',
    standing: { document: undefined, done: [], undone: [] },
    seq: 0,
    count: 0,
    canUndo: false,
    canRedo: false,
    readOnly: false,
    undoStopsAt: undefined,
    refusals: [],
    undoes: undefined,
    redoes: undefined,
    overwritten: [],
    isMovedOn: false,
    asked: undefined,
    listeners: new Set(),
    view: {
      state: 'loading',
      damage: '',
      piece: undefined,
      readOnly: false,
      canUndo: false,
      canRedo: false,
      undoStopsAtSignature: false,
      saving: 'saved',
      waiting: 0,
      lasting: true,
      trouble: false,
      seq: 0,
      refusals: [],
      overwritten: [],
    },
  };
}

/** What a screen shows of a piece with the given acts still to be handed in. */
export function viewOf(opened: OpenPiece, acts: readonly Act[], desk: DeskState): PieceView {
  const after = standingAfter(opened.standing, acts);
  const read = pieceSchema.safeParse(after.document);
  const gone = opened.damage === '' ? 'missing' : 'damaged';
  const state = read.success ? 'ready' : opened.came === 'not-yet' ? 'loading' : gone;
  const undoing = acts.filter((act) => act.type === 'undo').length;
  const newer = acts.some((act) => act.type === 'event');
  return {
    state,
    damage: opened.damage,
    piece: read.success ? read.data : undefined,
    readOnly: opened.readOnly,
    canUndo: !opened.readOnly && (after.done.length > 0 || (opened.canUndo && undoing === 0)),
    canRedo: !opened.readOnly && (after.undone.length > 0 || (opened.canRedo && acts.length === 0 && !newer)),
    undoStopsAtSignature: opened.undoStopsAt === 'signature' && after.done.length === 0,
    saving: acts.length === 0 ? 'saved' : desk.trouble ? 'waiting' : 'saving',
    waiting: acts.length,
    lasting: desk.lasting,
    trouble: desk.trouble,
    seq: opened.seq,
    refusals: opened.refusals,
    overwritten: stillOpen(opened.overwritten, acts),
  };
}

/** Those that no act in the line settles yet. */
function stillOpen(all: readonly Overwritten[], acts: readonly Act[]): readonly Overwritten[] {
  const settling = acts.flatMap((act) =>
    act.type === 'event' && act.event.of !== undefined ? [act.event] : [],
  );
  if (settling.length === 0) return all;
  return all.filter(({ act, path }) =>
    settling.every((event) => event.of !== act || event.changes.every((one) => `${one.path}` !== `${path}`)),
  );
}
