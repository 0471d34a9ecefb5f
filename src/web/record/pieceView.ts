import type { Overwritten } from '../../piece/overwritten.ts';
import { piece as pieceSchema } from '../../piece/piece.ts';
import type { Act } from './act.ts';
import type { DeskState, OpenPiece, PieceView } from './deskState.ts';
import { nothingYet, standingAfter } from './standing.ts';

/** A piece just asked for: nothing known of it yet. */
export function openPiece(id: string): OpenPiece {
  return {
    id,
    came: 'not-yet',
    damage: '',
    standing: nothingYet,
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
