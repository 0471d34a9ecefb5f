import type { JobStep } from './jobs.ts';

/** The step of a job that waits its turn, with how many pieces of work are before it. */
export function waitingStep(ahead: number): JobStep {
  const step =
    ahead === 1 ? 'Waiting for the work before it' : `Waiting for ${ahead} pieces of work before it`;
  return { step, done: 0, total: 1 };
}
