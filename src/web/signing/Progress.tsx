import { useId } from 'react';
import type { Job } from '../opinion/useJob.ts';

/** How far a long work is, or why it failed. */
export function Progress({ job }: { job: Job }) {
  const id = useId();
  if (job.stands === 'failed')
    return (
      <p role="alert" className="caution">
        {job.message}
      </p>
    );
  if (job.stands !== 'running') return null;
  return (
    <>
      <label htmlFor={id} className="small">
        {job.step}
      </label>
      <progress id={id} max={job.total} value={job.done} />
    </>
  );
}
