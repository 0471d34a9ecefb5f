import { useCallback, useEffect, useRef, useState } from 'react';
import { askServer } from '../record/pieceServer.ts';
import { tellBackupsChanged } from './useBackups.ts';

/** How the making of a copy stands. */
export type BackupJob =
  | { stands: 'idle' }
  | { stands: 'running'; step: string; done: number; total: number }
  | { stands: 'done' }
  | { stands: 'failed'; message: string };

type JobAnswer = {
  state: 'running' | 'done' | 'failed';
  step: string;
  done: number;
  total: number;
  message?: string;
};

const askEveryMs = 250;
const away = 'Can’t reach Underside on this computer. Is it still running? Try again in a moment.';

/** Begins a copy and follows it to its end; follows one that is being made already. */
export function useBackupJob(running: string | null): { job: BackupJob; begin: () => Promise<void> } {
  const [job, setJob] = useState<BackupJob>({ stands: 'idle' });
  const followed = useRef<string | undefined>(undefined);
  const left = useRef(false);
  useEffect(() => {
    left.current = false;
    return () => {
      left.current = true;
    };
  }, []);
  const follow = useCallback(async (id: string) => {
    if (followed.current === id) return;
    followed.current = id;
    while (!left.current) {
      const asked = await askServer<JobAnswer>(fetch, `/api/jobs/${encodeURIComponent(id)}`);
      const next = jobStands(asked.came === 'answer' ? asked.answer : undefined);
      setJob(next);
      if (next.stands !== 'running') return tellBackupsChanged();
      await new Promise((resolve) => setTimeout(resolve, askEveryMs));
    }
  }, []);
  useEffect(() => {
    if (running !== null) void follow(running);
  }, [running, follow]);
  const begin = useCallback(async () => {
    setJob({ stands: 'running', step: 'Beginning', done: 0, total: 1 });
    const begun = await askServer<{ job: string }>(fetch, '/api/backups', {});
    if (begun.came === 'answer') await follow(begun.answer.job);
    else setJob({ stands: 'failed', message: begun.came === 'refusal' ? begun.message : away });
  }, [follow]);
  return { job, begin };
}

function jobStands(answer: JobAnswer | undefined): BackupJob {
  if (answer === undefined) return { stands: 'failed', message: away };
  const { state, step, done, total, message } = answer;
  if (state === 'done') return { stands: 'done' };
  if (state === 'failed') return { stands: 'failed', message: message ?? 'No reason was given.' };
  return { stands: 'running', step, done, total: Math.max(1, total) };
}
