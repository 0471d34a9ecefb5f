import type { Overwritten } from '../../piece/overwritten.ts';
import type { Piece } from '../../piece/piece.ts';
import type { RecordAnswer } from '../../server/recordRoutes.ts';
import type { Act, ActMark, PieceAnswer, QueuedAct } from './act.ts';
import type { ActsAside } from './actsAside.ts';
import type { Identity } from './identity.ts';
import type { Outbox } from './outbox.ts';
import type { PieceServer } from './pieceServer.ts';
import type { Standing } from './standing.ts';

/** What a desk needs from outside; tests hand in their own. */
export type DeskEdges = {
  outbox: Promise<Outbox>;
  /** Where an act is put in the moment it is made, until the outbox has it. */
  aside: ActsAside;
  server: PieceServer;
  /** The record that last answered on this device: while none answers, what is entered is meant for it. */
  lastRecord: { read(): string | undefined; keep(id: string): void };
  /** Photos that wait on this device: the record takes an act only once it has the photos the act names. */
  photos: PhotosToHand;
  identity: () => Identity;
  now: () => string;
  freshId: () => string;
  /** Calls back after so many milliseconds; returns how to call it off. */
  later: (ms: number, act: () => void) => () => void;
  /** Runs the work while no other tab of this browser runs theirs. */
  alone: (work: () => Promise<void>) => Promise<void>;
  /** Tells other tabs that a piece has moved on. */
  tell: (pieceId: string) => void;
};

/** Hands one photo over by its hash; `again` where the record says it has none, though it was handed over. */
export type PhotosToHand = { handOver(sha256: string, again?: boolean): Promise<HandedOver> };

/** `not-here`: this device has no such photo to hand over. */
export type HandedOver = { came: 'handed' | 'not-here' | 'nothing' } | { came: 'refusal'; message: string };

/** What waits here for another record, and whether another one answers than the one the page was opened on. */
export type Elsewhere = { acts: readonly QueuedAct[]; isOther: boolean };

/** What stands over all pages: entries for another record, and why this one takes none. */
export type Above = {
  elsewhere: Elsewhere;
  /** Null while the record takes entries. */
  readOnly: RecordAnswer['readOnly'];
  /** How many entries wait in this browser for the record to take some again. */
  waiting: number;
  /** True while the record does not answer. */
  away: boolean;
  /** How many entries wait on this device, whatever for. */
  queued: number;
};

/** An act in the line; `place` is unknown for the moment until the outbox has it. */
export type Waiting = { act: Act; place: number | undefined };

/** What the desk holds while it is open. */
export type DeskState = {
  queue: Waiting[];
  /** Acts that wait for another record than the one that answers. */
  elsewhere: QueuedAct[];
  /** Ids of acts on pieces that this record does not have. */
  strays: Set<string>;
  /** The record this page was opened on, once it is known. */
  record: string | undefined;
  /** True while another record answers than the one this page was opened on. */
  isOther: boolean;
  /** Why the record takes no entries, as it last said. */
  readOnly: RecordAnswer['readOnly'];
  pieces: Map<string, OpenPiece>;
  delivering: boolean;
  /** True while the record does not answer. */
  trouble: boolean;
  tries: number;
  lasting: boolean;
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
