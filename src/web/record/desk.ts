import type { Change, EventKind, Json } from '../../piece/event.ts';
import { type Piece, piece as pieceSchema } from '../../piece/piece.ts';
import { type Act, actId, type PieceAnswer, type QueuedAct } from './act.ts';
import { deliverQueue, takeFromOutbox } from './deliverQueue.ts';
import type { Above, DeskEdges, DeskState, OpenPiece, PieceView, Waiting } from './deskState.ts';
import { afterPatience, soon } from './patience.ts';
import type { Asked } from './pieceServer.ts';
import { openPiece, viewOf } from './pieceView.ts';
import { nothingYet, type Standing, standingAfter, standingOf } from './standing.ts';
import { isStrange, strangeWords } from './strangeAct.ts';
import { withSeen } from './withSeen.ts';

const nothingAbove: Above = {
  elsewhere: { acts: [], isOther: false },
  readOnly: null,
  waiting: 0,
  away: false,
  queued: 0,
};

/** Where acts are made, shown at once, kept, and handed in to the record in order. */
export type Desk = ReturnType<typeof openDesk>;

/**
 * Opens the desk: loads what waited from before, and starts handing it in.
 */
export function openDesk(edges: DeskEdges) {
  const state: DeskState = {
    queue: [],
    elsewhere: [],
    strays: new Set(),
    record: undefined,
    isOther: false,
    readOnly: null,
    pieces: new Map(),
    delivering: false,
    trouble: false,
    tries: 0,
    lasting: true,
  };

  const pieceOf = (id: string): OpenPiece => {
    const there = state.pieces.get(id);
    if (there !== undefined) return there;
    const opened = openPiece(id);
    state.pieces.set(id, opened);
    return opened;
  };
  const actsOf = (id: string): Act[] =>
    state.queue.filter((waiting) => waiting.act.piece === id).map((waiting) => waiting.act);
  const show = (opened: OpenPiece): void => {
    opened.view = viewOf(opened, actsOf(opened.id), state);
    for (const listener of opened.listeners) listener();
  };
  const above = { listeners: new Set<() => void>(), shown: nothingAbove };
  const showAbove = (): void => {
    const { elsewhere: acts, isOther, readOnly, trouble: away } = state;
    const queued = state.queue.length;
    const waiting = readOnly === null ? 0 : state.queue.length;
    const was = above.shown;
    const isSame =
      acts.length + was.elsewhere.acts.length === 0 &&
      isOther === was.elsewhere.isOther &&
      readOnly?.words === was.readOnly?.words &&
      waiting === was.waiting &&
      away === was.away &&
      queued === was.queued;
    if (isSame) return;
    above.shown = { elsewhere: { acts, isOther }, readOnly, waiting, away, queued };
    for (const listener of above.listeners) listener();
  };
  const showAll = (): void => {
    for (const opened of state.pieces.values()) show(opened);
    showAbove();
  };

  const taken = (opened: OpenPiece, asked: Asked<PieceAnswer>, acts: readonly Act[] = []): void => {
    if (asked.came !== 'answer') return;
    const { answer } = asked;
    const after = standingAfter(opened.standing, acts);
    const onlyOurs =
      answer.count === undefined
        ? acts.length > 0 || answer.seq === opened.seq
        : answer.count === opened.count + acts.length;
    if (!onlyOurs && opened.came === 'answer') opened.isMovedOn = true;
    opened.count = answer.count ?? 0;
    opened.standing = {
      document: answer.piece as Json,
      done: onlyOurs ? after.done : [],
      undone: onlyOurs ? after.undone : [],
    };
    opened.seq = answer.seq;
    opened.canUndo = answer.canUndo;
    opened.canRedo = answer.canRedo;
    opened.undoes = answer.undoes;
    opened.redoes = answer.redoes;
    opened.overwritten = answer.overwritten ?? [];
    opened.undoStopsAt = answer.undoStopsAt;
    opened.readOnly = answer.readOnly ?? opened.readOnly;
    opened.came = 'answer';
    opened.damage = '';
    void edges.outbox
      .then((outbox) => outbox.know(state.record, opened.id, { ...answer, readOnly: opened.readOnly }))
      .catch(() => {});
  };

  /** Shows a piece as this device last knew it, where the record has not answered yet. */
  const showKnown = async (opened: OpenPiece): Promise<boolean> => {
    const known = await edges.outbox
      .then((outbox) => outbox.known(state.record, opened.id))
      .catch(() => undefined);
    if (known === undefined || opened.came !== 'not-yet') return known !== undefined;
    taken(opened, { came: 'answer', answer: known });
    show(opened);
    return true;
  };

  const read = async (id: string, known: readonly Waiting[] = []): Promise<void> => {
    const opened = pieceOf(id);
    const asking = edges.server.read(id, state.record);
    // A network may be there and carry nothing: what this device knows is shown meanwhile.
    const meanwhile = afterPatience(edges, () => void showKnown(opened));
    const asked = await asking;
    meanwhile();
    if (asked.came === 'answer') {
      state.queue = state.queue.filter((waiting) => !known.includes(waiting));
      // An answer to a question asked before the last delivery may come after it, and would show what was before.
      if (asked.answer.seq >= opened.seq) taken(opened, asked);
      state.trouble = false;
    } else if (asked.came === 'refusal' && asked.code === 'record.other-record') {
      state.isOther = true;
      showAll();
    } else if (asked.came === 'refusal') {
      opened.came = opened.came === 'answer' ? 'answer' : 'refusal';
      opened.damage = asked.code === 'record.piece-damaged' ? asked.message : '';
    } else if (opened.came === 'not-yet') {
      const isKnown = await showKnown(opened);
      if (!isKnown) edges.later(3000, () => opened.came === 'not-yet' && void read(id));
      state.trouble = true;
    }
    show(opened);
  };

  const deliver = (): void => {
    void deliverQueue({ state, edges, pieceOf, taken, read, show, showAll }).then(showAbove);
  };

  /** Ids of the acts made on this page. */
  const mine = new Set<string>();
  const put = (act: Act): void => {
    mine.add(actId(act));
    const waiting: Waiting = { act, place: undefined };
    const { record } = state;
    edges.aside.put(act, record);
    state.queue.push(waiting);
    show(pieceOf(act.piece));
    showAbove();
    void edges.outbox
      .then(async (outbox) => {
        waiting.place = await outbox.add(act, record);
        if (outbox.lasting) edges.aside.drop(actId(act));
      })
      .catch(() => {
        state.lasting = false;
      })
      .then(deliver);
  };

  const reverse = (id: string, type: 'undo' | 'redo'): void => {
    const opened = pieceOf(id);
    if (opened.readOnly) return;
    const after = standingAfter(opened.standing, actsOf(id));
    const inSight = (type === 'undo' ? after.done : after.undone).at(-1)?.id;
    const mark = type === 'undo' ? opened.undoes : opened.redoes;
    const of = inSight ?? mark?.id;
    if (inSight === undefined && mark !== undefined && isStrange(opened, mark, edges.identity(), mine)) {
      opened.asked = mark.id;
      opened.refusals = [...opened.refusals, strangeWords(type, mark)];
      show(opened);
      return;
    }
    const reversal = { id: edges.freshId(), at: edges.now(), ...edges.identity() };
    put({ type, piece: id, reversal: of === undefined ? reversal : { ...reversal, of } });
  };

  const begin = async (): Promise<void> => {
    const outbox = await edges.outbox;
    state.lasting = outbox.lasting;
    const known = await soon(edges.server.which(), edges);
    if (known.came === 'answer') {
      state.record = known.answer.id;
      state.readOnly = known.answer.readOnly ?? null;
      edges.lastRecord.keep(known.answer.id);
    }
    state.record ??= edges.lastRecord.read();
    const there = new Set((await outbox.all()).map(({ act }) => actId(act)));
    const ours = new Set(state.queue.map(({ act }) => actId(act)));
    for (const { act, record } of edges.aside.left()) {
      if (ours.has(actId(act))) continue;
      if (!there.has(actId(act))) await outbox.add(act, record);
      if (outbox.lasting) edges.aside.drop(actId(act));
    }
    takeFromOutbox(state, await outbox.all());
  };
  const begun = begin()
    .catch(() => {
      state.lasting = false;
    })
    .then(() => {
      showAll();
      deliver();
    });

  return {
    /** What a screen shows of a piece; the same object until something changes. */
    view: (id: string): PieceView => pieceOf(id).view,
    /** Calls back on every change of the piece; returns how to stop. The first watcher makes it load. */
    watch(id: string, listener: () => void): () => void {
      const opened = pieceOf(id);
      opened.listeners.add(listener);
      if (opened.listeners.size === 1) void read(id);
      return () => opened.listeners.delete(listener);
    },
    /** Does something to a piece: shown at once, kept, handed in. What makes no sense is refused in words, not kept. */
    record(id: string, kind: EventKind, changes: readonly Change[], of?: string): void {
      const opened = pieceOf(id);
      if (state.readOnly !== null || (opened.readOnly && kind !== 'piece-put-away')) return;
      if (changes.length === 0) return;
      const event = {
        id: edges.freshId(),
        piece: id,
        kind,
        changes: [...changes],
        ...(of === undefined ? {} : { of }),
        at: edges.now(),
        ...edges.identity(),
      };
      const before = standingAfter(opened.standing, actsOf(id));
      const after = standingAfter(before, [{ type: 'event', piece: id, event }]);
      const fits = pieceSchema.safeParse(after.document);
      if (opened.came !== 'not-yet' && !fits.success) {
        const where = fits.error.issues[0];
        opened.refusals = [...opened.refusals, `Not saved: ${where?.path.join(' › ')}: ${where?.message}.`];
        show(opened);
        return;
      }
      const seen =
        kind === 'piece-opened' ? event : { ...event, changes: withSeen(before.document, changes) };
      put({ type: 'event', piece: id, event: seen });
    },
    undo: (id: string): void => reverse(id, 'undo'),
    redo: (id: string): void => reverse(id, 'redo'),
    /** The refusals of a piece were read: take them off the screen. */
    dismissRefusals(id: string): void {
      pieceOf(id).refusals = [];
      show(pieceOf(id));
    },
    /** Tries again now: on coming back to the page or to the network. */
    wake(): void {
      state.tries = 0;
      state.strays.clear();
      deliver();
      for (const opened of state.pieces.values()) if (opened.listeners.size > 0) void read(opened.id);
    },
    /** Another tab says a piece has moved on. */
    hear(id: string): void {
      if ((state.pieces.get(id)?.listeners.size ?? 0) > 0) void read(id);
    },
    /** Comes back once nothing waits, or after a few seconds while the record does not answer. */
    async settled(): Promise<void> {
      for (let turn = 0; turn < 40 && state.queue.length > 0; turn += 1) {
        await new Promise<void>((done) => edges.later(50, done));
      }
    },
    /** What stands over all pages; the same object until something changes. */
    above: (): Above => above.shown,
    watchAbove(listener: () => void): () => void {
      above.listeners.add(listener);
      return () => above.listeners.delete(listener);
    },
    /** The pieces that open on this device without the record: those that were opened, and those begun here. */
    async onDevice(): Promise<Piece[]> {
      await begun;
      const known = await edges.outbox.then((outbox) => outbox.allKnown(state.record)).catch(() => []);
      const waiting = state.queue.map(({ act }) => act.piece);
      const standing = new Map<string, Standing>(known.map(([id, answer]) => [id, standingOf(answer)]));
      return [...new Set([...standing.keys(), ...waiting])].flatMap((id) => {
        const after = standingAfter(standing.get(id) ?? nothingYet, actsOf(id));
        const read = pieceSchema.safeParse(after.document);
        return read.success ? [read.data] : [];
      });
    },
    /** What a piece was last known to be called, in whatever record; undefined where it is not known here. */
    async titleOf({ act, record }: QueuedAct): Promise<string | undefined> {
      const known = await edges.outbox
        .then((outbox) => outbox.known(record, act.piece))
        .catch(() => undefined);
      return (known?.piece as { title?: string } | undefined)?.title;
    },
    /** Takes acts that wait for another record out of this browser: the person has them as a file, or wants them gone. */
    async forgetElsewhere(acts: readonly QueuedAct[]): Promise<void> {
      const outbox = await edges.outbox;
      await outbox.remove(acts.map(({ place }) => place));
      takeFromOutbox(state, await outbox.all());
      showAll();
    },
    /** How many acts wait to be handed in. */
    waiting: (): number => state.queue.length,
    /** The ids of the acts that wait, first to go first. */
    waitingIds: (): string[] => state.queue.map((waiting) => actId(waiting.act)),
  };
}
