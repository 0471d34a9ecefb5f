import type { Standing } from '../../drawing/hatching.ts';
import type { Weighing } from '../../evidence/weighing.ts';

/** How each standing is hatched, in words. */
export const hatchWords: Record<Standing, string> = {
  'of-the-making': 'no hatching',
  repair: 'slanting lines',
  improve: 'crossed lines',
  'other-old': 'dots',
  unsure: 'sparse dashes',
};

/** The standing of each part by its id; empty before anything is weighed. */
export function standingByPart(weighing: Weighing | undefined): Record<string, Standing> {
  return Object.fromEntries((weighing?.parts ?? []).map((part) => [part.id, part.standing]));
}
