import { Worker } from 'node:worker_threads';
import { done, type Outcome, refuse } from '../ground/fault.ts';

/** A picture as plain pixels: red, green, blue and opacity, row by row. */
export type Pixels = { width: number; height: number; pixels: Uint8Array };

type Answer = Pixels | { fault: 'empty' | 'too-many-pixels' | 'broken' };

/** Longer than any phone's picture takes on a slow machine. */
const longestMs = 60_000;

/**
 * The pixels of a HEIC file, turned upright, decoded in a thread of its own.
 *
 * @param worker  the built heicWorker
 */
export async function decodeHeic(
  worker: URL,
  bytes: Uint8Array,
  mostPixels: number,
): Promise<Outcome<Pixels>> {
  const thread = new Worker(worker, { workerData: { bytes, mostPixels }, stdout: true, stderr: true });
  const answer = await firstAnswer(thread);
  await thread.terminate();
  if (!('fault' in answer)) return done(answer);
  if (answer.fault === 'too-many-pixels') return tooManyPixels(mostPixels);
  return refuse(
    'photo.broken',
    'The HEIC photo cannot be read: it is damaged or cut short. Send the original again, or a JPEG of it.',
  );
}

/** What the thread says, or that it ended or hung without a word. */
function firstAnswer(thread: Worker): Promise<Answer> {
  return new Promise((resolve) => {
    const tooLong = setTimeout(() => resolve({ fault: 'broken' }), longestMs);
    const settle = (answer: Answer) => {
      clearTimeout(tooLong);
      resolve(answer);
    };
    thread.once('message', settle);
    thread.once('error', () => settle({ fault: 'broken' }));
    thread.once('exit', () => settle({ fault: 'broken' }));
  });
}

/** The fault for a picture that would fill the memory when opened. */
export function tooManyPixels(mostPixels: number): ReturnType<typeof refuse> {
  return refuse(
    'photo.too-many-pixels',
    `The picture has more than ${Math.floor(mostPixels / 1e6)} million pixels: hand in a smaller one.`,
  );
}
