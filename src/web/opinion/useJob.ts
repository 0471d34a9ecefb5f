import { useCallback, useEffect, useRef, useState } from 'react';
import { beginJob, beginning, type EndedJob, followJob, type RunningJob } from '../record/followJob.ts';

/** How a work stands. */
export type Job = { stands: 'idle' } | RunningJob | EndedJob;

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
        setJob(beginning);
        const begun = await beginJob(path, body);
        const ended = 'id' in begun ? await followJob(begun.id, setJob, () => left.current, fault) : begun;
        if (ended !== undefined) setJob(ended);
        return ended;
      } finally {
        running.current = false;
      }
    },
    [path, fault],
  );
  return { job, begin };
}
