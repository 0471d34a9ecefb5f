import type { Standing } from '../../drawing/hatching.ts';
import type { FirstAnswer } from '../../weighing/firstAnswer.ts';

/** The standing of each part by its id; empty before anything is weighed. */
export function standingByPart(first: FirstAnswer | undefined): Record<string, Standing> {
  return Object.fromEntries((first?.parts ?? []).map((part) => [part.id, part.standing]));
}
