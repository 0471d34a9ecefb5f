import { Hono } from 'hono';
import type { Piece } from '../piece/piece.ts';
import type { RecordStore } from '../record/store.ts';
import { faultAnswer } from './faultAnswer.ts';
import type { JobStep, Jobs } from './jobs.ts';

/** Sets a piece's opinion as a PDF. */
export type SetOpinion = (piece: Piece, onStep: (step: JobStep) => void) => Promise<Uint8Array>;

/** The opinion as a PDF: begun as a job, or waited for. */
export function opinionRoutes(store: RecordStore, jobs: Jobs, setOpinion: SetOpinion): Hono {
  const routes = new Hono();
  routes.post('/pieces/:id/opinion', (context) => {
    const view = store.piece(context.req.param('id'));
    if (view === undefined)
      return faultAnswer(context, 404, 'record.no-piece', 'There is no such piece in this record.');
    return context.json({ job: jobs.begin((onStep) => setOpinion(view.piece, onStep)) }, 202);
  });
  routes.get('/pieces/:id/opinion.pdf', async (context) => {
    const view = store.piece(context.req.param('id'));
    if (view === undefined)
      return faultAnswer(context, 404, 'record.no-piece', 'There is no such piece in this record.');
    try {
      const pdf = await setOpinion(view.piece, () => {});
      return context.body(new Uint8Array(pdf), 200, pdfHeaders(view.piece.id));
    } catch (error) {
      return faultAnswer(
        context,
        422,
        'opinion.not-set',
        `The opinion could not be set: ${(error as Error).message}`,
      );
    }
  });
  routes.get('/jobs/:job', (context) => {
    const state = jobs.state(context.req.param('job'));
    return state ? context.json(state) : noJob(context);
  });
  routes.get('/jobs/:job/file', (context) => {
    const file = jobs.file(context.req.param('job'));
    return file ? context.body(new Uint8Array(file), 200, pdfHeaders('opinion')) : noJob(context);
  });
  return routes;
}

function pdfHeaders(name: string): Record<string, string> {
  return {
    'content-type': 'application/pdf',
    'content-disposition': `attachment; filename="${name}.pdf"`,
    'cache-control': 'no-store',
  };
}

function noJob(context: Parameters<typeof faultAnswer>[0]) {
  return faultAnswer(
    context,
    404,
    'server.no-job',
    'This work is not there, or not done yet: ask for the opinion again.',
  );
}
