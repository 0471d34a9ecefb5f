import { type Context, Hono } from 'hono';
import { z } from 'zod';
import { day } from '../piece/engagement.ts';
import { draftEvent, type RecordedEvent } from '../piece/event.ts';
import { revisionsOf } from '../piece/issued.ts';
import { readRevisionFile, sha256Of } from '../record/issuedFolder.ts';
import {
  type Difference,
  type DifferenceParts,
  differenceSince,
  type ReadingsSince,
  readingsSince,
} from './differenceSince.ts';
import { faultAnswer, faultsAnswer } from './faultAnswer.ts';
import { opinionFileName, pdfHeaders } from './issuedFile.ts';
import { canIssue, type IssueParts, issueRevision } from './issueRevision.ts';
import type { Jobs } from './jobs.ts';
import { readBody, readJson } from './readJson.ts';

const issueBody = draftEvent.pick({ id: true, who: true, device: true, at: true }).extend({
  name: z.string().trim().min(1, 'Write the name you sign with').max(200),
  day,
  seq: z.number().int(),
});

/** What the screens are told of a piece's revisions. */
export type IssuedAnswer = {
  revisions: ReturnType<typeof revisionsOf>;
  /** How the piece differs from its last revision; null where none was issued. */
  since: (Difference & { revision: number }) | null;
};

/** A revision beside the piece as it is. */
export type Comparison = Difference & ReadingsSince;

/** Signing, and what was signed: begun as a job, handed out again from stored bytes only, compared with the piece as it is. */
export function issuedRoutes(parts: IssueParts & DifferenceParts & { jobs: Jobs }): Hono {
  const { store, jobs, dataDir } = parts;
  const routes = new Hono();
  const signing = new Map<string, { id: string; job: string }>();

  routes.post('/pieces/:id/issue', async (context) => {
    const body = readBody(await readJson(context), issueBody);
    if (!body.ok) return faultsAnswer(context, body.faults);
    const { name: by, day: on, ...rest } = body.value;
    const request = { ...rest, piece: context.req.param('id'), by, on };
    const running = signing.get(request.piece);
    if (running !== undefined && running.id === request.id) return context.json({ job: running.job }, 202);
    if (running !== undefined && jobs.state(running.job)?.state === 'running')
      return faultAnswer(
        context,
        409,
        'issue.under-way',
        'This opinion is being signed already: wait for it.',
      );
    // Asked again after the program was started anew: it was signed then.
    const earlier = store.find(request.id);
    if (earlier?.kind === 'opinion-issued' && earlier.piece === request.piece)
      return context.json({ job: jobs.begin(async () => storedPdf(parts, earlier)) }, 202);
    const view = canIssue(store.piece(request.piece), request);
    if (!view.ok) return faultsAnswer(context, view.faults);
    const job = jobs.begin((onStep) => issueRevision(parts, view.value, request, onStep));
    signing.set(request.piece, { id: request.id, job });
    return context.json({ job }, 202);
  });

  routes.get('/pieces/:id/issued', async (context) => {
    const view = store.piece(context.req.param('id'));
    if (view === undefined) return noRevision(context);
    const revisions = revisionsOf(view.piece);
    const last = revisions.at(-1);
    const since = last === undefined ? undefined : await differenceSince(parts, view.piece, last);
    return context.json({
      revisions,
      since: last === undefined || since === undefined ? null : { revision: last.revision, ...since },
    } satisfies IssuedAnswer);
  });

  routes.get('/pieces/:id/issued/:revision/comparison', async (context) => {
    const view = store.piece(context.req.param('id'));
    const issued = view?.piece.issued[context.req.param('revision')];
    if (view === undefined || issued === undefined) return noRevision(context);
    const difference = await differenceSince(parts, view.piece, issued);
    const readings = await readingsSince(parts, view.piece, issued);
    if (difference === undefined || readings === undefined) return filesChanged(context, issued.revision);
    return context.json({ ...difference, ...readings } satisfies Comparison);
  });

  routes.get('/pieces/:id/issued/:revision/opinion.pdf', async (context) => {
    const piece = store.piece(context.req.param('id'))?.piece;
    const issued = piece?.issued[context.req.param('revision')];
    if (piece === undefined || issued === undefined) return noRevision(context);
    const bytes = await readRevisionFile(dataDir, piece.id, issued.revision, 'opinion.pdf');
    if (bytes === undefined || sha256Of(bytes) !== issued.pdfSha256)
      return filesChanged(context, issued.revision);
    const name = opinionFileName(piece, issued.on, `revision ${issued.revision}`);
    return context.body(new Uint8Array(bytes), 200, pdfHeaders(name));
  });
  return routes;
}

async function storedPdf({ dataDir }: IssueParts, act: RecordedEvent): Promise<Uint8Array> {
  const revision = Number(act.changes[0]?.path[1]);
  const bytes = await readRevisionFile(dataDir, act.piece, revision, 'opinion.pdf');
  if (bytes === undefined) throw new Error(`Revision ${revision} is signed, but its file is not there.`);
  return bytes;
}

function noRevision(context: Context) {
  return faultAnswer(context, 404, 'issue.none', 'There is no such revision in this record.');
}

function filesChanged(context: Context, revision: number) {
  return faultAnswer(
    context,
    409,
    'issue.files-changed',
    `The stored files of revision ${revision} are not those that were signed, so none is handed out: run npx underside verify, and put the folder "issued" back from a copy.`,
  );
}
