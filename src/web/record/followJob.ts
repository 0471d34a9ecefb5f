import { askServer } from './pieceServer.ts';

/** A long work of the server, running: what it does now, and how far it is. */
export type RunningJob = { stands: 'running'; step: string; done: number; total: number };

/** How a long work of the server ended: where its file lies, or why there is none. */
export type EndedJob = { stands: 'done'; file: string } | { stands: 'failed'; message: string };

type JobAnswer = {
  state: 'running' | 'done' | 'failed';
  step: string;
  done: number;
  total: number;
  message?: string;
};

const askEveryMs = 250;

/** How a long work stands that has just been asked for. */
export const beginning: RunningJob = { stands: 'running', step: 'Beginning', done: 0, total: 1 };

/** What is said when the server does not answer for a long work. */
const awayWords =
  'Can’t reach Underside on this computer. Is it still running? Nothing is lost: ask again when it is back.';

/**
 * Asks the server for a long work.
 *
 * @param path  where it is asked for
 * @returns the id to follow it by, or why it was not begun
 */
export async function beginJob(
  path: string,
  body: object,
): Promise<{ id: string } | { stands: 'failed'; message: string }> {
  const begun = await askServer<{ job: string }>(fetch, path, body);
  if (begun.came === 'answer') return { id: begun.answer.job };
  return { stands: 'failed', message: begun.came === 'refusal' ? begun.message : awayWords };
}

/**
 * Follows a long work of the server to its end.
 *
 * @param tell   told how it stands whenever the server was asked
 * @param left   true once nobody waits for it any more: then it is followed no further
 * @param fault  said before the reason of a failure
 * @returns how it ended; undefined where it was left before
 */
export async function followJob(
  id: string,
  tell: (job: RunningJob) => void,
  left: () => boolean,
  fault = '',
): Promise<EndedJob | undefined> {
  const at = `/api/jobs/${encodeURIComponent(id)}`;
  while (!left()) {
    const asked = await askServer<JobAnswer>(fetch, at);
    if (asked.came !== 'answer')
      return { stands: 'failed', message: asked.came === 'refusal' ? asked.message : awayWords };
    const { state, step, done, total, message } = asked.answer;
    if (state === 'done') return { stands: 'done', file: `${at}/file` };
    if (state === 'failed')
      return { stands: 'failed', message: `${fault} ${message ?? 'No reason was given.'}`.trim() };
    tell({ stands: 'running', step, done, total: Math.max(1, total) });
    await new Promise((resolve) => setTimeout(resolve, askEveryMs));
  }
  return undefined;
}
