import type { Alteration } from '../knowledge/schema.ts';
import type { ReadingId } from '../piece/readings.ts';

/** Whether a form’s alterations leave a way to a reading: without one that puts a piece together from old ones, it is never that. */
export function isConsidered(reading: ReadingId, alterations: readonly Pick<Alteration, 'class'>[]): boolean {
  return reading !== 'made-up' || alterations.some((each) => each.class === 'make-up');
}
