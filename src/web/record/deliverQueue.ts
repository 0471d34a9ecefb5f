import { photosNamed } from '../../piece/photosNamed.ts';
import { type Act, actId, type PieceAnswer, type QueuedAct } from './act.ts';
import type { DeskEdges, DeskState, OpenPiece, Waiting } from './deskState.ts';
import type { Asked } from './pieceServer.ts';

type Delivery = {
  state: DeskState;
  edges: DeskEdges;
  pieceOf: (id: string) => OpenPiece;
  taken: (opened: OpenPiece, asked: Asked<PieceAnswer>, acts: readonly Act[]) => void;
  /** Asks the record for a piece; `known` leave the line in the moment it answers. */
  read: (id: string, known?: readonly Waiting[]) => Promise<void>;
  show: (opened: OpenPiece) => void;
  showAll: () => void;
};

const mostAtOnce = 40;

/**
 * Hands in what waits, first come first, until nothing waits or the record does not answer.
 *
 * An act leaves the outbox only after the record it was made for has answered for it. When nobody answers, or another
 * record does, it tries again, at first after a second, later every fifteen. What the record refuses is taken out of the
 * line and said in words, so that one bad entry never holds up the rest; an act on a piece that this record does not have
 * stays in the outbox, for another record may.
 */
export async function deliverQueue(delivery: Delivery): Promise<void> {
  const { state, edges } = delivery;
  if (state.delivering) return;
  state.delivering = true;
  try {
    await edges.alone(async () => {
      if (await isTheRecord(delivery)) {
        await agreeWithOutbox(delivery);
        await handIn(delivery);
      }
    });
  } finally {
    state.delivering = false;
  }
  if (state.queue.some((waiting) => waiting.place !== undefined) && !state.trouble)
    await deliverQueue(delivery);
}

/** Whether the record answers that this page was opened on, and takes what waits. */
async function isTheRecord(delivery: Delivery): Promise<boolean> {
  const { state, edges } = delivery;
  const asked = await edges.server.which();
  const was = state.isOther;
  // A server that can't say which record it has is taken as it is.
  if (asked.came === 'answer') {
    state.record ??= asked.answer.id;
    if (state.record === asked.answer.id) edges.lastRecord.keep(state.record);
  }
  state.isOther = asked.came === 'answer' && asked.answer.id !== state.record;
  const wasReadOnly = state.readOnly;
  if (asked.came === 'answer') state.readOnly = asked.answer.readOnly ?? null;
  const isThere = asked.came !== 'nothing' && !state.isOther;
  // What waits for a record that is only looked at waits until it takes entries again.
  const takes = isThere && (state.readOnly === null || state.queue.length === 0);
  if (!takes) tryLater(delivery);
  else if (state.trouble) {
    Object.assign(state, { trouble: false, tries: 0 });
    delivery.showAll();
  } else if (was || wasReadOnly?.words !== state.readOnly?.words) delivery.showAll();
  return takes;
}

/** Another tab may have handed in some of ours, or left some behind when it closed. */
async function agreeWithOutbox({ state, edges, read, showAll }: Delivery): Promise<void> {
  const outbox = await edges.outbox.catch(() => undefined);
  const kept = await outbox?.all().catch(() => undefined);
  if (kept === undefined) return;
  const places = new Set(kept.map((queued) => queued.place));
  const gone = state.queue.filter((waiting) => waiting.place !== undefined && !places.has(waiting.place));
  const waited = state.elsewhere.length;
  takeFromOutbox(state, kept);
  if (state.elsewhere.length !== waited) showAll();
  // They stay in sight until the record has told what they came to.
  state.queue = [...gone, ...state.queue];
  for (const id of new Set(gone.map((waiting) => waiting.act.piece))) await read(id, gone);
  state.queue = state.queue.filter((waiting) => !gone.includes(waiting));
}

/** Lays what the outbox holds in the line; what belongs to another record, or to none that is known, waits beside it. */
export function takeFromOutbox(state: DeskState, kept: readonly QueuedAct[]): void {
  const there = new Set(kept.map(({ act }) => actId(act)));
  const fresh = state.queue.filter(({ act, place }) => place === undefined && !there.has(actId(act)));
  const isElsewhere = ({ record, act }: QueuedAct) =>
    (record !== undefined && state.record !== undefined && record !== state.record) ||
    state.strays.has(actId(act));
  state.elsewhere = kept.filter(isElsewhere);
  state.queue = [...kept.filter((queued) => !isElsewhere(queued)), ...fresh];
}

function tryLater(delivery: Delivery): void {
  const { state, edges } = delivery;
  state.trouble = true;
  const wait = Math.min(15_000, 1000 * 2 ** Math.min(state.tries, 4));
  state.tries += 1;
  edges.later(wait, () => void deliverQueue(delivery));
  delivery.showAll();
}

/** A piece that is not in this record may be in the one it was made for, and a damaged one may be brought back from a copy. */
const notHere = new Set([
  'record.not-opened',
  'record.no-piece',
  'record.other-record',
  'record.piece-damaged',
]);

async function handIn(delivery: Delivery): Promise<void> {
  const { state, edges, pieceOf, taken, show, showAll } = delivery;
  let atOnce = mostAtOnce;
  for (;;) {
    const batch = nextBatch(state.queue, atOnce);
    const first = batch[0];
    if (first === undefined) return;
    const acts = batch.map((waiting) => waiting.act);
    const opened = pieceOf(first.act.piece);
    const asked = await sendWithPhotos(delivery, first.act.piece, acts);
    if (asked.came === 'nothing') return tryLater(delivery);
    state.trouble = false;
    state.tries = 0;
    if (asked.came === 'refusal' && batch.length > 1) {
      atOnce = 1;
      continue;
    }
    if (asked.came === 'refusal' && notHere.has(asked.code ?? '')) {
      for (const { act } of batch) state.strays.add(actId(act));
      state.queue = state.queue.filter((waiting) => !batch.includes(waiting));
      await agreeWithOutbox(delivery);
      showAll();
      continue;
    }
    // In one step, so that no moment has the acts neither in the line nor in what the record answered.
    state.queue = state.queue.filter((waiting) => !batch.includes(waiting));
    if (asked.came === 'answer') {
      taken(opened, asked, acts);
      show(opened);
      await leaveOutbox(delivery, batch);
      edges.tell(opened.id);
    } else {
      opened.refusals = [...opened.refusals, asked.message];
      await leaveOutbox(delivery, batch);
      await delivery.read(opened.id);
    }
  }
}

/** The acts to send next: one undo or redo, or as many events of one piece as follow each other. */
function nextBatch(queue: readonly Waiting[], atOnce: number): Waiting[] {
  const first = queue[0];
  if (first === undefined || first.place === undefined) return [];
  if (first.act.type !== 'event') return [first];
  const end = queue.findIndex(
    ({ act, place }) => act.type !== 'event' || act.piece !== first.act.piece || place === undefined,
  );
  return queue.slice(0, Math.min(atOnce, end === -1 ? queue.length : end));
}

/** The photos that acts name go first: the record takes no act whose photo it does not have. */
async function sendWithPhotos(
  delivery: Delivery,
  id: string,
  acts: readonly Act[],
): Promise<Asked<PieceAnswer>> {
  const stopped = await handOverPhotos(delivery, acts, false);
  if (stopped !== undefined) return stopped;
  const asked = await send(delivery, id, acts);
  if (asked.came !== 'refusal' || asked.code !== 'record.photo-not-here') return asked;
  // It was handed over once; a record brought back from an older copy may have it no longer.
  return (await handOverPhotos(delivery, acts, true)) ?? send(delivery, id, acts);
}

/** What stands in the way of the acts, or undefined where nothing does. */
async function handOverPhotos(
  { edges }: Delivery,
  acts: readonly Act[],
  again: boolean,
): Promise<Exclude<Asked<never>, { came: 'answer' }> | undefined> {
  const named = acts.flatMap((act) => (act.type === 'event' ? photosNamed(act.event) : []));
  for (const sha256 of new Set(named)) {
    const handed = await edges.photos.handOver(sha256, again);
    if (handed.came === 'nothing') return { came: 'nothing' };
    if (handed.came === 'refusal') return { came: 'refusal', status: 422, message: handed.message };
  }
  return undefined;
}

function send({ state, edges }: Delivery, id: string, acts: readonly Act[]): Promise<Asked<PieceAnswer>> {
  const first = acts[0];
  if (first !== undefined && first.type !== 'event')
    return edges.server.reverse(id, first.type, first.reversal, state.record);
  return edges.server.record(
    id,
    acts.flatMap((act) => (act.type === 'event' ? [act.event] : [])),
    state.record,
  );
}

async function leaveOutbox({ edges }: Delivery, batch: readonly Waiting[]): Promise<void> {
  const places = batch.flatMap((waiting) => (waiting.place === undefined ? [] : [waiting.place]));
  const outbox = await edges.outbox.catch(() => undefined);
  await outbox?.remove(places).catch(() => undefined);
  for (const { act } of batch) edges.aside.drop(actId(act));
}
