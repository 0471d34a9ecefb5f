import { done, type Outcome, refuse } from '../ground/fault.ts';
import type { DraftEvent, Json, RecordedEvent } from '../piece/event.ts';
import { invertChanges } from '../piece/fold.ts';
import { type Overwritten, unsettled } from '../piece/overwritten.ts';
import { type Piece, piece as pieceSchema } from '../piece/piece.ts';
import { type Adoption, type ForeignActs, planAdoption } from './adoptActs.ts';
import { canonicalJson } from './canonicalJson.ts';
import { chainStart, type Head, linkEvent } from './chain.ts';
import { checkAct, readPiece } from './checkAct.ts';
import { readingPiece } from './damagedPiece.ts';
import type { EventLog, PlacedEvent } from './eventLog.ts';
import { keepUnseen } from './keepUnseen.ts';
import { newState, type PieceState, type PieceSteps, stepsFrom } from './pieceState.ts';
import { readDrafts } from './readDrafts.ts';
import type { RecordHead } from './recordHead.ts';

/** A piece as the record has it now. `seq` is the place of its last event in the whole record. */
export type PieceView = {
  piece: Piece;
  seq: number;
  canUndo: boolean;
  canRedo: boolean;
  readOnly: boolean;
  /** How many acts it has. */
  count: number;
  /** The act that an undo would take back, and the one that a redo would bring back. */
  undoes?: ActMark;
  redoes?: ActMark;
  /** Values that were written over by a device that had not seen them, and wait for an examiner to settle. */
  overwritten: Overwritten[];
  /** Why nothing can be taken back where nothing can. */
  undoStopsAt?: PieceState['stopsAt'];
};

/** A page of a history. `older` is what to ask before for the page that precedes it; undefined at the beginning. */
export type HistoryPage = { events: RecordedEvent[]; total: number; older: number | undefined };

/** Acts read between two pauses: a few milliseconds of work. */
const sliceActs = 500;

/** Who asks for an undo or redo; `id` makes asking twice harmless. */
export type StepRequest = Pick<DraftEvent, 'id' | 'device' | 'who' | 'at'> & {
  /** The act that is meant; left out, it is the last one whoever made it. */
  of?: string | undefined;
};

/** Which act, and whose. */
export type ActMark = Pick<DraftEvent, 'id' | 'who' | 'device' | 'at'>;

/** The record of all pieces: acts go in, pieces come out; nothing is ever changed or lost. */
export type RecordStore = {
  /** The id of the record, made once and kept for as long as there is a copy of it. */
  readonly recordId: string;
  /** The number of all acts, and one hash over where every device's chain stands. */
  head(): RecordHead;
  /** Records acts of one or more pieces, all or none. Acts that are in the record already are passed over. */
  append(events: unknown): Outcome<{ accepted: string[] }>;
  /** Takes back the last act of a piece that still stands. */
  undo(piece: string, request: StepRequest): Outcome<undefined>;
  /** Brings back the act that was taken back last. */
  redo(piece: string, request: StepRequest): Outcome<undefined>;
  /**
   * Takes in the acts of a piece from another record, all that are new here or none; each keeps what it was there.
   *
   * @param onlyTry  true to be told what would come of it
   */
  adopt(foreign: ForeignActs, onlyTry: boolean): Outcome<{ added: number; known: number; remarks: string[] }>;
  /**
   * Records that a revision was signed, once its files are safe. Refused where the piece has moved on from `seq`, which
   * it was made from. The same act twice is harmless.
   */
  issue(event: unknown, seq: number): Outcome<undefined>;
  piece(id: string): PieceView | undefined;
  /** What a piece's acts come to, as recorded: not read by this program's idea of a piece. */
  document(id: string): Json | undefined;
  find(id: string): RecordedEvent | undefined;
  /** Ids of all pieces, examples first. */
  pieces(): string[];
  /** When the first and last act of a piece were made, by the device's clock. */
  times(id: string): { firstAt: string | undefined; lastAt: string | undefined };
  /** All acts on a piece, oldest first. */
  history(id: string): RecordedEvent[];
  /** The acts before a place, the newest `most` of them, oldest first; the last acts where no place is given. */
  historyPage(id: string, page: { before?: number; most: number }): HistoryPage;
  /** Reads a piece in, a slice at a time, so that others are answered meanwhile; it is then at hand. */
  load(id: string, pause?: () => Promise<void>): Promise<void>;
  close(): void;
};

/**
 * A record over a log. What the pieces come to is kept in memory, and only after the log has it safe.
 *
 * @param log    where events are kept
 * @param bases  documents of the worked examples by id: these pieces are there without any event, and read-only
 */
export function createStore(log: EventLog, bases: ReadonlyMap<string, Json> = new Map()): RecordStore {
  const states = new Map<string, PieceState>();
  const stateOf = (id: string): PieceState => {
    const known = states.get(id);
    if (known !== undefined) return known;
    const state = readingPiece(id, () => {
      const steps = stepsFrom(newState(bases.get(id)));
      takeAll(steps, log.ofPiece(id));
      return steps.state();
    });
    if (state.document !== undefined) states.set(id, state);
    return state;
  };
  // A document is never changed in place, so it needs reading once.
  const pieces = new WeakMap<object, Piece>();
  const pieceIn = (document: Json): Piece => {
    const known = pieces.get(document as object);
    if (known !== undefined) return known;
    const piece = pieceSchema.parse(document);
    pieces.set(document as object, piece);
    return piece;
  };

  const loading = new Map<string, Promise<void>>();
  const loadInSlices = async (id: string, pause: () => Promise<void>): Promise<void> => {
    const steps = stepsFrom(newState(bases.get(id)));
    for (let after = 0; !states.has(id); ) {
      const slice = readingPiece(id, () => {
        const acts = log.ofPiece(id, { after, most: sliceActs });
        takeAll(steps, acts);
        return acts;
      });
      after = slice.at(-1)?.position ?? after;
      if (slice.length < sliceActs) {
        const state = steps.state();
        if (state.document !== undefined) states.set(id, state);
        return;
      }
      await pause();
    }
  };

  /** Links acts to their chains, checks what they come to, writes them, and only then remembers. */
  const commit = (drafts: readonly DraftEvent[]): Outcome<undefined> => {
    const heads = new Map<string, Head>();
    const steps = new Map<string, PieceSteps>();
    const linked: RecordedEvent[] = [];
    for (const [index, draft] of drafts.entries()) {
      const piece = steps.get(draft.piece) ?? stepsFrom(stateOf(draft.piece));
      const event = linkEvent(
        { ...draft, changes: piece.make(draft.changes).map((one) => keepUnseen(one, piece.at)) },
        heads.get(draft.device) ?? log.head(draft.device) ?? chainStart,
      );
      heads.set(draft.device, event);
      piece.count(event, index);
      steps.set(draft.piece, piece);
      linked.push(event);
    }
    const after = new Map([...steps].map(([id, piece]) => [id, piece.state()]));
    for (const [id, state] of after) {
      const read = readPiece(state.document, id, bases.has(id));
      if (!read.ok) return read;
      pieces.set(state.document as object, read.value);
    }
    try {
      const first = log.append(linked);
      for (const [id, state] of after) states.set(id, { ...state, position: first + state.position });
    } catch (error) {
      return couldNotWrite(error);
    }
    return done(undefined);
  };

  const step = (kind: 'undo' | 'redo', id: string, request: StepRequest): Outcome<undefined> => {
    const earlier = log.find(request.id);
    if (earlier) return earlier.kind === kind && earlier.piece === id ? done(undefined) : idUsed(request.id);
    const state = stateOf(id);
    const target = (kind === 'undo' ? state.done : state.undone).at(-1);
    if (target === undefined) {
      if (kind === 'undo' && state.stopsAt === 'signature')
        return refuse(
          'record.nothing-to-undo',
          'Undo stops at a signature: what was signed stays signed. Begin a new revision to change it.',
        );
      return kind === 'undo'
        ? refuse('record.nothing-to-undo', 'There is nothing left to take back.')
        : refuse('record.nothing-to-redo', 'There is nothing to bring back.');
    }
    if (request.of !== undefined && request.of !== target.id) return notTheLast(kind, target);
    const changes =
      kind === 'undo' ? invertChanges(target.changes) : target.changes.map(({ saw: _told, ...one }) => one);
    const draft = {
      id: request.id,
      piece: id,
      kind,
      changes,
      who: request.who,
      device: request.device,
      at: request.at,
      of: target.id,
    };
    const read = readDrafts([draft]);
    return read.ok ? commit(read.value) : read;
  };

  const planOf = (foreign: ForeignActs): Outcome<Adoption> => {
    if (bases.has(foreign.piece))
      return refuse('record.example-is-read-only', 'The worked examples stay as they are.', 'piece');
    const here = log.ofPiece(foreign.piece).map((one) => one.event);
    const planned = planAdoption(foreign, here, (device, seq) => log.at(device, seq));
    const elsewhere = planned.ok
      ? planned.value.fresh.find(({ id }) => log.find(id) !== undefined)
      : undefined;
    return elsewhere === undefined ? planned : idUsed(elsewhere.id);
  };

  return {
    recordId: log.recordId,
    head: () => log.recordHead(),
    append(events) {
      const read = readDrafts(events);
      if (!read.ok) return read;
      const fresh = newActs(read.value, log);
      if (!fresh.ok) return fresh;
      const allowed = checkAll(fresh.value, stateOf, bases);
      if (!allowed.ok) return allowed;
      const written = fresh.value.length === 0 ? done(undefined) : commit(fresh.value);
      return written.ok ? done({ accepted: read.value.map((draft) => draft.id) }) : written;
    },
    adopt(foreign, onlyTry) {
      const planned = planOf(foreign);
      if (!planned.ok) return planned;
      const { fresh, known, remarks } = planned.value;
      const written = onlyTry || fresh.length === 0 ? done(undefined) : commit(fresh);
      return written.ok ? done({ added: fresh.length, known, remarks }) : written;
    },
    issue(event, seq) {
      const read = readDrafts([event]);
      if (!read.ok) return read;
      const fresh = newActs(read.value, log);
      const [draft] = fresh.ok ? fresh.value : [];
      if (!fresh.ok || draft === undefined) return fresh.ok ? done(undefined) : fresh;
      if (bases.has(draft.piece) || stateOf(draft.piece).position !== seq)
        return refuse(
          'record.moved-on',
          'The piece was changed while it was being signed, so nothing was signed: look at it once more, and sign again.',
        );
      return commit([draft]);
    },
    undo: (piece, request) => step('undo', piece, request),
    redo: (piece, request) => step('redo', piece, request),
    piece(id) {
      const state = stateOf(id);
      if (state.document === undefined) return undefined;
      const { document } = state;
      const piece = readingPiece(id, () => pieceIn(document));
      return {
        piece,
        seq: state.position,
        canUndo: state.done.length > 0,
        canRedo: state.undone.length > 0,
        count: state.count,
        ...marks(state),
        overwritten: unsettled(state.overwritten),
        readOnly: bases.has(id),
        ...(state.done.length === 0 ? { undoStopsAt: state.stopsAt } : {}),
      };
    },
    document: (id) => stateOf(id).document,
    find: (id) => log.find(id),
    pieces: () => [...new Set([...bases.keys(), ...log.pieces()])],
    times: (id) => ({ firstAt: stateOf(id).firstAt, lastAt: stateOf(id).lastAt }),
    history: (id) => readingPiece(id, () => log.ofPiece(id).map((one) => one.event)),
    historyPage(id, { before = Number.MAX_SAFE_INTEGER, most }) {
      const page = readingPiece(id, () => log.ofPiece(id, { before, most }));
      const oldest = page[0]?.position;
      return {
        events: page.map((one) => one.event),
        total: log.count(id),
        older: page.length < most ? undefined : oldest,
      };
    },
    async load(id, pause = nextTurn) {
      if (states.has(id)) return;
      const under = loading.get(id) ?? loadInSlices(id, pause).finally(() => loading.delete(id));
      loading.set(id, under);
      await under;
    },
    close: () => log.close(),
  };
}

/** What the last act that stands and the last one taken back are, where there are such. */
function marks({ done: stand, undone }: PieceState): Pick<PieceView, 'undoes' | 'redoes'> {
  const mark = ({ id, who, device, at }: RecordedEvent): ActMark => ({ id, who, device, at });
  const [undoes, redoes] = [stand.at(-1), undone.at(-1)];
  return {
    ...(undoes === undefined ? {} : { undoes: mark(undoes) }),
    ...(redoes === undefined ? {} : { redoes: mark(redoes) }),
  };
}

function notTheLast(kind: 'undo' | 'redo', { who, device, at }: RecordedEvent): ReturnType<typeof refuse> {
  const by = who === '' ? `on ${device}` : `by ${who} on ${device}`;
  const words = kind === 'undo' ? 'taken back' : 'brought back';
  return refuse(
    'record.not-the-last',
    `Nothing was ${words}: meanwhile another act came between, made ${by} at ${at.slice(11, 16)}. Look at the piece as it is now, and press again if you still want it.`,
  );
}

function takeAll(steps: PieceSteps, events: readonly PlacedEvent[]): void {
  for (const { event, position } of events) {
    steps.make(event.changes);
    steps.count(event, position);
  }
}

/** Lets whatever waits be answered first. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** The acts that are not in the record yet; one whose id stands for another act is a fault. */
function newActs(drafts: readonly DraftEvent[], log: EventLog): Outcome<DraftEvent[]> {
  const fresh = new Map<string, DraftEvent>();
  for (const draft of drafts) {
    const earlier = fresh.get(draft.id) ?? log.find(draft.id);
    if (earlier === undefined) fresh.set(draft.id, draft);
    else if (actText(earlier) !== actText(draft)) return idUsed(draft.id);
  }
  return done([...fresh.values()]);
}

/** What makes two hand-ins the same act: everything but what the record itself fills in. */
function actText(event: DraftEvent): string {
  const { id, piece, kind, who, device, at } = event;
  return canonicalJson({
    id,
    piece,
    kind,
    who,
    device,
    at,
    changes: event.changes.map(({ path, to }) => ({ path, to })),
  });
}

function checkAll(
  drafts: readonly DraftEvent[],
  stateOf: (id: string) => PieceState,
  bases: ReadonlyMap<string, Json>,
): Outcome<undefined> {
  const opened = new Map<string, PieceState>();
  for (const [index, draft] of drafts.entries()) {
    const state = opened.get(draft.piece) ?? stateOf(draft.piece);
    const allowed = checkAct(state, draft, bases.has(draft.piece));
    if (!allowed.ok)
      return {
        ok: false,
        faults: allowed.faults.map((one) => ({ ...one, path: `events.${index}.${one.path}` })),
      };
    if (draft.kind === 'piece-opened') opened.set(draft.piece, newState(draft.changes[0]?.to ?? null));
  }
  return done(undefined);
}

function idUsed(id: string): ReturnType<typeof refuse> {
  return refuse(
    'record.id-used',
    `The act ${id} is in the record already, and says something else: give the new act an id of its own.`,
    'id',
  );
}

function couldNotWrite(error: unknown): ReturnType<typeof refuse> {
  const code = (error as { code?: string }).code ?? '';
  if (code === 'SQLITE_FULL')
    return refuse(
      'record.disk-full',
      'The disk is full, and nothing was written: free some space and try again.',
    );
  return refuse(
    'record.could-not-write',
    `The record could not be written (${(error as Error).message}): nothing was changed.`,
  );
}
