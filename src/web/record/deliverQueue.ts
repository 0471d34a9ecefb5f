import type { Act, PieceAnswer } from './act.ts';
import type { DeskEdges, DeskState, Waiting } from './desk.ts';
import type { Asked } from './pieceServer.ts';
import type { OpenPiece } from './pieceView.ts';

type Delivery = {
  state: DeskState;
  edges: DeskEdges;
  pieceOf: (id: string) => OpenPiece;
  taken: (opened: OpenPiece, asked: Asked<PieceAnswer>, acts: readonly Act[]) => void;
  read: (id: string) => Promise<void>;
  show: (opened: OpenPiece) => void;
  showAll: () => void;
};

const mostAtOnce = 40;

/**
 * Hands in what waits, first come first, until nothing waits or the record does not answer.
 *
 * An act leaves the outbox only after the record has answered for it. When nobody answers it tries again, at first
 * after a second, later every fifteen. What the record refuses is taken out of the line and said in words, so that
 * one bad entry never holds up the rest.
 */
export async function deliverQueue(delivery: Delivery): Promise<void> {
  const { state, edges } = delivery;
  if (state.delivering) return;
  state.delivering = true;
  try {
    await edges.alone(async () => {
      await agreeWithOutbox(delivery);
      await handIn(delivery);
    });
  } finally {
    state.delivering = false;
  }
  if (state.queue.some((waiting) => waiting.place !== undefined) && !state.trouble)
    await deliverQueue(delivery);
}

/** Another tab may have handed in some of ours, or left some behind when it closed. */
async function agreeWithOutbox({ state, edges, read }: Delivery): Promise<void> {
  const outbox = await edges.outbox.catch(() => undefined);
  const kept = await outbox?.all().catch(() => undefined);
  if (kept === undefined) return;
  const places = new Set(kept.map((queued) => queued.place));
  const gone = state.queue.filter((waiting) => waiting.place !== undefined && !places.has(waiting.place));
  const fresh = state.queue.filter((waiting) => waiting.place === undefined);
  state.queue = [...kept.map(({ place, act }) => ({ place, act })), ...fresh];
  for (const id of new Set(gone.map((waiting) => waiting.act.piece))) await read(id);
}

async function handIn(delivery: Delivery): Promise<void> {
  const { state, edges, pieceOf, taken, show, showAll } = delivery;
  let atOnce = mostAtOnce;
  for (;;) {
    const batch = nextBatch(state.queue, atOnce);
    const first = batch[0];
    if (first === undefined) return;
    const acts = batch.map((waiting) => waiting.act);
    const opened = pieceOf(first.act.piece);
    const asked = await send(edges, first.act.piece, acts);
    if (asked.came === 'nothing') {
      state.trouble = true;
      const wait = Math.min(15_000, 1000 * 2 ** Math.min(state.tries, 4));
      state.tries += 1;
      edges.later(wait, () => void deliverQueue(delivery));
      showAll();
      return;
    }
    state.trouble = false;
    state.tries = 0;
    if (asked.came === 'refusal' && batch.length > 1) {
      atOnce = 1;
      continue;
    }
    await leaveQueue(delivery, batch);
    if (asked.came === 'answer') {
      taken(opened, asked, acts);
      edges.tell(opened.id);
      show(opened);
    } else {
      opened.refusals = [...opened.refusals, asked.message];
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

function send(edges: DeskEdges, id: string, acts: readonly Act[]): Promise<Asked<PieceAnswer>> {
  const first = acts[0];
  if (first !== undefined && first.type !== 'event')
    return edges.server.reverse(id, first.type, first.reversal);
  return edges.server.record(
    id,
    acts.flatMap((act) => (act.type === 'event' ? [act.event] : [])),
  );
}

async function leaveQueue({ state, edges }: Delivery, batch: readonly Waiting[]): Promise<void> {
  const places = batch.flatMap((waiting) => (waiting.place === undefined ? [] : [waiting.place]));
  state.queue = state.queue.filter((waiting) => !batch.includes(waiting));
  const outbox = await edges.outbox.catch(() => undefined);
  await outbox?.remove(places).catch(() => undefined);
}
