import type { SpeaksOf } from '../benchRoom.ts';

/** Across what the grain was followed. */
export type Across = 'cuff' | 'leg' | 'veneer' | 'other';

/**
 * The signs that grain across a band speaks of. Each is here by what its being there means: that the grain goes on (one piece),
 * or that it breaks off (two pieces).
 */
const signsOf: Record<Across, { signs: readonly string[]; presentMeans: 'one' | 'two' } | undefined> = {
  cuff: { signs: ['grain-runs-on-through-cuff'], presentMeans: 'one' },
  leg: { signs: ['leg-grain-interrupted'], presentMeans: 'two' },
  veneer: { signs: ['veneer-patch-grain'], presentMeans: 'two' },
  other: undefined,
};

/**
 * What a match of grain says of the signs.
 *
 * @param likelihoodRatio  one piece : two, above 0
 * @returns undefined where no sign of the knowledge is about grain there
 */
export function grainSpeaksOf(across: Across, likelihoodRatio: number): SpeaksOf | undefined {
  const of = signsOf[across];
  if (of === undefined) return undefined;
  const [one, two] = likelihoodRatio >= 1 ? [1, 1 / likelihoodRatio] : [likelihoodRatio, 1];
  return {
    signs: of.signs,
    likelihoods: of.presentMeans === 'one' ? { present: one, absent: two } : { present: two, absent: one },
  };
}
