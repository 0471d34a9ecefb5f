import { Hono } from 'hono';
import { z } from 'zod';
import { type PaperForm, type PaperKind, paperForms, paperKinds, paperWords } from '../engagement/papers.ts';
import type { Piece } from '../piece/piece.ts';
import type { RecordStore } from '../record/store.ts';
import { localDay } from './askOpinion.ts';
import { faultAnswer } from './faultAnswer.ts';
import { fileHeaders, opinionFileName, pdfHeaders } from './issuedFile.ts';
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
  routes.post('/pieces/:id/opinion', async (context) => {
    const view = store.piece(context.req.param('id'));
    if (view === undefined)
      return faultAnswer(context, 404, 'record.no-piece', 'There is no such piece in this record.');
    const asked = paperAsked.safeParse(await context.req.json().catch(() => ({})));
    if (!asked.success)
      return faultAnswer(
        context,
        422,
        'opinion.no-such-paper',
        `There is no such paper: ${paperKinds.join(', ')}, as ${paperForms.join(', ')}.`,
      );
    const { paper, as } = asked.data;
    const name = draftName(view.piece, now(), paper, as);
    return context.json(
      { job: jobs.begin((onStep) => setOpinion(view.piece, onStep, { paper, as }), name) },
      202,
    );
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
    return file ? context.body(new Uint8Array(file.bytes), 200, fileHeaders(file.name)) : noJob(context);
  });
  return routes;
}

/** What may be asked for; the full report as PDF when left out. */
const paperAsked = z.object({
  paper: z.enum(paperKinds).default('full'),
  as: z.enum(paperForms).default('pdf'),
});

/** A handout names nobody, in its file's name neither. */
function draftName(piece: Piece, now: Date, paper: PaperKind = 'full', as: PaperForm = 'pdf'): string {
  const two = (n: number) => String(n).padStart(2, '0');
  const named = paper === 'lesson' ? { id: 'case', title: paperWords.lesson.name } : piece;
  const kind = paper === 'full' || paper === 'lesson' ? '' : `${paperWords[paper].name.toLowerCase()}, `;
  const which = `${kind}${two(now.getHours())}${two(now.getMinutes())}, draft`;
  return opinionFileName(named, localDay(now), which, as);
}

function noJob(context: Parameters<typeof faultAnswer>[0]) {
  return faultAnswer(
    context,
    404,
    'server.no-job',
    'This work is not there, or not done yet: ask for the opinion again.',
  );
}
