import { randomUUID } from 'node:crypto';

/** How a long piece of work stands. */
export type JobState = {
  state: 'running' | 'done' | 'failed';
  step: string;
  done: number;
  total: number;
  message?: string;
};

/** Where work says how far it is. */
export type JobStep = { step: string; done: number; total: number };

/** Work that takes longer than an answer may: begun, asked after, fetched. */
export type Jobs = {
  /** @param name  what its file is called when it is saved */
  begin(work: (onStep: (step: JobStep) => void) => Promise<Uint8Array>, name?: string): string;
  state(id: string): JobState | undefined;
  file(id: string): { bytes: Uint8Array; name: string } | undefined;
};

/** @param mostKept  finished jobs beyond this number are forgotten, the oldest first */
export function openJobs(mostKept = 8): Jobs {
  const jobs = new Map<string, { now: JobState; file?: { bytes: Uint8Array; name: string } }>();
  const forgetOldest = () => {
    const ended = [...jobs].filter(([, job]) => job.now.state !== 'running');
    for (const [id] of ended.slice(0, Math.max(0, ended.length - mostKept))) jobs.delete(id);
  };
  return {
    begin(work, name = 'opinion.pdf') {
      const id = randomUUID();
      jobs.set(id, { now: { state: 'running', step: 'Beginning', done: 0, total: 1 } });
      const onStep = (step: JobStep) => jobs.set(id, { now: { state: 'running', ...step } });
      work(onStep)
        .then(
          (bytes) =>
            jobs.set(id, {
              now: { state: 'done', step: 'Ready', done: 1, total: 1 },
              file: { bytes, name },
            }),
          (error: Error) =>
            jobs.set(id, {
              now: { state: 'failed', step: 'Stopped', done: 0, total: 1, message: error.message },
            }),
        )
        .finally(forgetOldest);
      return id;
    },
    state: (id) => jobs.get(id)?.now,
    file: (id) => jobs.get(id)?.file,
  };
}
