import type { Weighing } from '../../evidence/weighing.ts';

/** What a part is called: of the making, or what it is instead. */
export type Standing = Weighing['parts'][number]['standing'];

/** The word that always stands beside the hatching. */
export const standingWords: Record<Standing, string> = {
  'of-the-making': 'of the making',
  repair: 'honest repair',
  improve: 'later, to improve',
  'other-old': 'from another old piece',
  unsure: 'unsure',
};

/** How each standing is hatched, in words. */
export const hatchWords: Record<Standing, string> = {
  'of-the-making': 'no hatching',
  repair: 'slanting lines',
  improve: 'crossed lines',
  'other-old': 'dots',
  unsure: 'sparse dashes',
};

export const standings: readonly Standing[] = ['of-the-making', 'repair', 'improve', 'other-old', 'unsure'];

/** The standing of each part by its id; empty before anything is weighed. */
export function standingByPart(weighing: Weighing | undefined): Record<string, Standing> {
  return Object.fromEntries((weighing?.parts ?? []).map((part) => [part.id, part.standing]));
}
