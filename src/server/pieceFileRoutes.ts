import { randomUUID } from 'node:crypto';
import { createReadStream, createWriteStream, mkdirSync } from 'node:fs';
import { rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Hono } from 'hono';
import { type Outcome, refuse } from '../ground/fault.ts';
import { type BringInParts, bringInPiece } from '../record/pieceFile/bringIn.ts';
import type { WrittenPiece } from '../record/pieceFile/writePieceFile.ts';
import { faultAnswer, faultsAnswer } from './faultAnswer.ts';
import type { JobStep, Jobs } from './jobs.ts';

/** The largest file of a piece that comes in. */
const mostBytes = 8_000_000_000;

/** How many files taken out wait to be fetched; older ones are removed. */
const mostWaiting = 4;

/** What the routes need: the record, and the thread that takes a piece out. */
export type PieceFileParts = BringInParts & {
  jobs: Jobs;
  /** Files wait in its folder "incoming". */
  workDir: string;
  takeOut: (piece: string, to: string, onStep: (step: JobStep) => void) => Promise<Outcome<WrittenPiece>>;
};

/** One piece as one file: taken out as a job and fetched, brought in as it comes. */
export function pieceFileRoutes(parts: PieceFileParts, most = mostBytes): Hono {
  const { workDir, jobs, takeOut } = parts;
  const routes = new Hono();
  const waiting = new Map<string, { path: string; piece: string }>();
  const inTurn = { last: Promise.resolve() as Promise<unknown> };

  routes.post('/pieces/:id/file', (context) => {
    const piece = context.req.param('id');
    const path = join(workDir, 'incoming', `${randomUUID()}.zip`);
    mkdirSync(dirname(path), { recursive: true });
    const job = jobs.begin(async (onStep) => {
      const written = await takeOut(piece, path, onStep);
      if (!written.ok) throw new Error(written.faults.map(({ message }) => message).join(' '));
      return Buffer.from(JSON.stringify(written.value));
    });
    waiting.set(job, { path, piece });
    for (const [old, file] of [...waiting].slice(0, Math.max(0, waiting.size - mostWaiting))) {
      waiting.delete(old);
      void rm(file.path, { force: true });
    }
    return context.json({ job }, 202);
  });
  routes.get('/piece-files/:job', async (context) => {
    const file = waiting.get(context.req.param('job'));
    const found = file && (await stat(file.path).catch(() => undefined));
    if (file === undefined || found === undefined)
      return faultAnswer(
        context,
        404,
        'server.no-job',
        'This file is not there, or not done yet: take the piece out again.',
      );
    return context.body(Readable.toWeb(createReadStream(file.path)) as ReadableStream, 200, {
      'content-type': 'application/zip',
      'content-length': String(found.size),
      'content-disposition': `attachment; filename="${file.piece.replaceAll(/[^A-Za-z0-9_-]/g, '')}.zip"`,
    });
  });
  routes.put('/piece-files', async (context) => {
    const body = context.req.raw.body;
    if (body === null)
      return faultAnswer(context, 422, 'piece-file.empty', 'The file is empty: choose it again.');
    if (Number(context.req.header('content-length') ?? 0) > most)
      return faultsAnswer(context, tooLarge().faults, 413);
    const beside = context.req.query('beside') === 'yes';
    // One at a time: what is checked against the record must still be so when it is kept.
    const coming = inTurn.last.then(() => bringInBody(body, parts, beside, most));
    inTurn.last = coming.catch(() => undefined);
    const came = await coming;
    return came.ok ? context.json(came.value) : faultsAnswer(context, came.faults);
  });
  return routes;
}

async function bringInBody(
  body: ReadableStream<Uint8Array>,
  parts: PieceFileParts,
  beside: boolean,
  most: number,
) {
  const came = { bytes: 0 };
  const at = join(parts.workDir, 'incoming', randomUUID());
  mkdirSync(dirname(at), { recursive: true });
  try {
    const upToMost = async function* (chunks: AsyncIterable<Uint8Array>) {
      for await (const chunk of chunks) {
        came.bytes += chunk.byteLength;
        if (came.bytes > most) return;
        yield chunk;
      }
    };
    await pipeline(
      Readable.fromWeb(body as never),
      upToMost,
      createWriteStream(`${at}.zip`, { mode: 0o600 }),
    );
    if (came.bytes > most) return tooLarge();
    return await bringInPiece(`${at}.zip`, at, parts, beside);
  } finally {
    await rm(`${at}.zip`, { force: true });
  }
}

function tooLarge(): ReturnType<typeof refuse> {
  return refuse('piece-file.too-large', 'The file is larger than that of a piece can be.');
}
