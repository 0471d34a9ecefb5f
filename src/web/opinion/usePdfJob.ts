import { useCallback, useEffect, useRef, useState } from 'react';
import { askServer } from '../record/pieceServer.ts';

/** How the setting of the document stands. */
export type PdfJob =
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

/** Begins the setting of a piece's opinion and follows it to its end. */
export function usePdfJob(id: string): { job: PdfJob; begin: () => Promise<void> } {
  const [job, setJob] = useState<PdfJob>({ stands: 'idle' });
  const left = useRef(false);
  useEffect(() => {
    left.current = false;
    return () => {
      left.current = true;
    };
  }, []);
  const begin = useCallback(async () => {
    setJob({ stands: 'running', step: 'Beginning', done: 0, total: 1 });
    const begun = await askServer<{ job: string }>(
      fetch,
      `/api/pieces/${encodeURIComponent(id)}/opinion`,
      {},
    );
    if (begun.came !== 'answer') {
      setJob({ stands: 'failed', message: begun.came === 'refusal' ? begun.message : away });
      return;
    }
    const at = `/api/jobs/${encodeURIComponent(begun.answer.job)}`;
    while (!left.current) {
      const asked = await askServer<JobAnswer>(fetch, at);
      const next = jobStands(
        asked.came === 'answer' ? asked.answer : undefined,
        at,
        asked.came === 'refusal' ? asked.message : away,
      );
      setJob(next);
      if (next.stands !== 'running') return;
      await new Promise((done) => setTimeout(done, askEveryMs));
    }
  }, [id]);
  return { job, begin };
}

function jobStands(answer: JobAnswer | undefined, at: string, trouble: string): PdfJob {
  if (answer === undefined) return { stands: 'failed', message: trouble };
  if (answer.state === 'done') return { stands: 'done', file: `${at}/file` };
  if (answer.state === 'failed') {
    return {
      stands: 'failed',
      message: `The document could not be set: ${answer.message ?? 'no reason was given'}`,
    };
  }
  return { stands: 'running', step: answer.step, done: answer.done, total: Math.max(1, answer.total) };
}
