import { useCallback, useEffect, useRef, useState } from 'react';
import { askServer } from '../record/pieceServer.ts';

/** How a work stands. */
export type Job =
  | { stands: 'idle' }
  | { stands: 'running'; step: string; done: number; total: number }
  | { stands: 'done'; file: string }
  | { stands: 'failed'; message: string };

type JobAnswer = {
  state: 'running' | 'done' | 'failed';
  step: string;
  done: number;
  total: number;
  message?: string;
};

const away =
  'Can’t reach Underside on this computer. Is it still running? Nothing is lost: ask again when it is back.';
const askEveryMs = 250;

/**
 * Begins a long work of the server and follows it to its end. While one runs, none other is begun.
 *
 * @param path   where it is asked for
 * @param fault  how its failure is said before the reason
 */
export function useJob(
  path: string,
  fault: string,
): { job: Job; begin: (body: object) => Promise<Job | undefined> } {
  const [job, setJob] = useState<Job>({ stands: 'idle' });
  const left = useRef(false);
  const running = useRef(false);
  useEffect(() => {
    left.current = false;
    return () => {
      left.current = true;
    };
  }, []);
  const begin = useCallback(
    async (body: object) => {
      if (running.current) return undefined;
      running.current = true;
      try {
        return await followed(path, body, fault, setJob, () => left.current);
      } finally {
        running.current = false;
      }
    },
    [path, fault],
  );
  return { job, begin };
}

async function followed(
  path: string,
  body: object,
  fault: string,
  tell: (job: Job) => void,
  left: () => boolean,
): Promise<Job> {
  let now: Job = { stands: 'running', step: 'Beginning', done: 0, total: 1 };
  tell(now);
  const begun = await askServer<{ job: string }>(fetch, path, body);
  if (begun.came !== 'answer') {
    now = { stands: 'failed', message: begun.came === 'refusal' ? begun.message : away };
    tell(now);
    return now;
  }
  const at = `/api/jobs/${encodeURIComponent(begun.answer.job)}`;
  while (!left() && now.stands === 'running') {
    const asked = await askServer<JobAnswer>(fetch, at);
    now = jobStands(
      asked.came === 'answer' ? asked.answer : undefined,
      at,
      asked.came === 'refusal' ? asked.message : away,
      fault,
    );
    tell(now);
    if (now.stands === 'running') await new Promise((done) => setTimeout(done, askEveryMs));
  }
  return now;
}

function jobStands(answer: JobAnswer | undefined, at: string, trouble: string, fault: string): Job {
  if (answer === undefined) return { stands: 'failed', message: trouble };
  if (answer.state === 'done') return { stands: 'done', file: `${at}/file` };
  if (answer.state === 'failed') {
    return {
      stands: 'failed',
      message: `${fault} ${answer.message ?? 'No reason was given.'}`,
    };
  }
  return { stands: 'running', step: answer.step, done: answer.done, total: Math.max(1, answer.total) };
}
