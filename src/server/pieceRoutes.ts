import { randomUUID } from 'node:crypto';
import { Hono } from 'hono';
import { z } from 'zod';
import { refuse } from '../ground/fault.ts';
import { draftEvent } from '../piece/event.ts';
import type { PhotoFolder } from '../record/photos.ts';
import { readDrafts } from '../record/readDrafts.ts';
import type { PieceView, RecordStore } from '../record/store.ts';
import { copyPiece } from './copyPiece.ts';
import { faultAnswer, faultsAnswer } from './faultAnswer.ts';
import { photosAreHere } from './photosAreHere.ts';
import { readBody, readJson } from './readJson.ts';
import { summarizePieces } from './summarize.ts';

const stepBody = draftEvent.pick({ id: true, device: true, who: true, at: true, of: true });
const copyBody = draftEvent.pick({ device: true, who: true, at: true }).extend({ id: z.string().optional() });
const eventsBody = z.strictObject({ events: z.array(z.unknown()) });

/** A page of a history: so many acts, before the place that the page after it gave. */
const historyQuery = z
  .strictObject({
    most: z.coerce.number().int().min(1).max(5000),
    before: z.coerce.number().int().min(1).optional(),
  })
  .transform(({ most, before }) => (before === undefined ? { most } : { most, before }));

/** The pieces: read, acted on, taken back, copied, their history. */
export function pieceRoutes(store: RecordStore, photos: PhotoFolder): Hono {
  const routes = new Hono();
  routes.get('/', async (context) => context.json(await summarizePieces(store)));
  // A page says which record it was opened on: another data folder may answer at its address by now.
  routes.use('*', async (context, next) => {
    const meant = context.req.header('x-underside-record');
    if (meant === undefined || meant === store.recordId) return next();
    return faultAnswer(
      context,
      409,
      'record.other-record',
      'Another data folder answers at this address now: nothing was done. Load the page anew to see it.',
    );
  });
  // Whatever is asked of a piece, it is read in first, and others are answered while that goes on.
  routes.use('/:id/*', async (context, next) => {
    await store.load(context.req.param('id'));
    await next();
  });
  routes.get('/:id', async (context) => {
    const view = store.piece(context.req.param('id'));
    return view ? context.json(view) : faultsAnswer(context, noPiece(context.req.param('id')).faults);
  });
  routes.get('/:id/history', (context) => {
    const id = context.req.param('id');
    if (store.piece(id) === undefined) return faultsAnswer(context, noPiece(id).faults);
    const { most, before } = context.req.query();
    if (most === undefined && before === undefined) return context.json({ events: store.history(id) });
    const page = historyQuery.safeParse({ most, before });
    return page.success
      ? context.json(store.historyPage(id, page.data))
      : faultsAnswer(
          context,
          refuse('server.bad-request', 'Ask for a page of the history by “most” (1 to 5000) and “before”.')
            .faults,
        );
  });
  routes.post('/:id/events', async (context) => {
    const id = context.req.param('id');
    const body = readBody(await readJson(context), eventsBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    const stray = body.value.events.findIndex((event) => (event as { piece?: unknown } | null)?.piece !== id);
    if (stray >= 0)
      return faultsAnswer(
        context,
        refuse('record.other-piece', `The act is not one on the piece "${id}".`, `events.${stray}.piece`)
          .faults,
      );
    // What is no act at all is told before anything in it is walked.
    const drafts = readDrafts(body.value.events);
    if (!drafts.ok) return faultsAnswer(context, drafts.faults);
    const here = await photosAreHere(drafts.value, store.document(id), photos);
    if (!here.ok) return faultsAnswer(context, here.faults);
    const kept = store.append(body.value.events);
    if (!kept.ok) return faultsAnswer(context, kept.faults);
    return context.json({ accepted: kept.value.accepted, ...answerOf(store.piece(id)) });
  });
  for (const kind of ['undo', 'redo'] as const) {
    routes.post(`/:id/${kind}`, async (context) => {
      const id = context.req.param('id');
      const body = readBody(await readJson(context), stepBody);
      if (!body.ok) return faultsAnswer(context, body.faults);
      if (store.piece(id) === undefined) return faultsAnswer(context, noPiece(id).faults);
      const kept = store[kind](id, body.value);
      if (!kept.ok) return faultsAnswer(context, kept.faults);
      return context.json({ accepted: [body.value.id], ...answerOf(store.piece(id)) });
    });
  }
  routes.post('/:id/copy', async (context) => {
    const body = readBody(await readJson(context), copyBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    const view = store.piece(context.req.param('id'));
    if (view === undefined) return faultsAnswer(context, noPiece(context.req.param('id')).faults);
    const copied = await copyPiece(store, photos, view.piece, {
      ...body.value,
      id: body.value.id ?? randomUUID(),
    });
    return copied.ok ? context.json(copied.value) : faultsAnswer(context, copied.faults);
  });
  return routes;
}

function answerOf(view: PieceView | undefined): Partial<PieceView> {
  return view ?? {};
}

function noPiece(id: string): ReturnType<typeof refuse> {
  return refuse('record.no-piece', `There is no piece "${id.slice(0, 80)}" in this record.`, 'piece');
}
