import { useCallback, useEffect, useRef, useState } from 'react';
import { beginJob, beginning, type EndedJob, followJob, type RunningJob } from '../record/followJob.ts';
import { tellBackupsChanged } from './useBackups.ts';

/** How the making of a copy stands. */
export type BackupJob = { stands: 'idle' } | RunningJob | EndedJob;

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
    const ended = await followJob(id, setJob, () => left.current);
    if (ended === undefined) return;
    setJob(ended);
    tellBackupsChanged();
  }, []);
  useEffect(() => {
    if (running !== null) void follow(running);
  }, [running, follow]);
  const begin = useCallback(async () => {
    setJob(beginning);
    const begun = await beginJob('/api/backups', {});
    if ('id' in begun) await follow(begun.id);
    else setJob(begun);
  }, [follow]);
  return { job, begin };
}
