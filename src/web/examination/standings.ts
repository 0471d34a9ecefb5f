import type { Standing } from '../../drawing/hatching.ts';
import type { Weighing } from '../../weighing/weighing.ts';

/** The standing of each part by its id; empty before anything is weighed. */
export function standingByPart(weighing: Weighing | undefined): Record<string, Standing> {
  return Object.fromEntries((weighing?.parts ?? []).map((part) => [part.id, part.standing]));
}
