import { Hono } from 'hono';
import type { Piece } from '../piece/piece.ts';
import type { RecordStore } from '../record/store.ts';
import { localDay } from './askOpinion.ts';
import { faultAnswer } from './faultAnswer.ts';
import { opinionFileName, pdfHeaders } from './issuedFile.ts';
import type { Jobs } from './jobs.ts';
import type { SetOpinion } from './opinionQuestion.ts';

/** The opinion as a draft: begun as a job, or waited for. What was signed is handed out by its own routes. */
export function opinionRoutes(
  store: RecordStore,
  jobs: Jobs,
  setOpinion: SetOpinion,
  now: () => Date = () => new Date(),
): Hono {
  const routes = new Hono();
  routes.post('/pieces/:id/opinion', (context) => {
    const view = store.piece(context.req.param('id'));
    if (view === undefined)
      return faultAnswer(context, 404, 'record.no-piece', 'There is no such piece in this record.');
    const name = draftName(view.piece, now());
    return context.json({ job: jobs.begin((onStep) => setOpinion(view.piece, onStep), name) }, 202);
  });
  routes.get('/pieces/:id/opinion.pdf', async (context) => {
    const view = store.piece(context.req.param('id'));
    if (view === undefined)
      return faultAnswer(context, 404, 'record.no-piece', 'There is no such piece in this record.');
    try {
      const pdf = await setOpinion(view.piece, () => {});
      return context.body(new Uint8Array(pdf), 200, pdfHeaders(draftName(view.piece, now())));
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
    return file ? context.body(new Uint8Array(file.bytes), 200, pdfHeaders(file.name)) : noJob(context);
  });
  return routes;
}

function draftName(piece: Piece, now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return opinionFileName(piece, localDay(now), `${two(now.getHours())}${two(now.getMinutes())}, draft`);
}

function noJob(context: Parameters<typeof faultAnswer>[0]) {
  return faultAnswer(
    context,
    404,
    'server.no-job',
    'This work is not there, or not done yet: ask for the opinion again.',
  );
}
