import type { Agreement } from './agreement.ts';

/** How likely each cause was to leave the wear that was painted; the largest is 1. */
export type WearOdds = { natural: number; none: number; imitated: number };

/** How well wear agrees with touch, as an area under the curve: a judgement. */
export const agrees = { natural: { mean: 0.88, sd: 0.09 }, imitated: { mean: 0.62, sd: 0.16 } } as const;

/** Wear by eye speaks at most so many times for one cause: a judgement. */
export const mostWearRatio = 5;

/**
 * How far painted wear speaks for natural use, none, or an imitation.
 *
 * Method: the agreement of natural wear is normal about 0.88 and that of made wear, which goes where the eye falls, about 0.62, the
 * measure’s own uncertainty added; what agrees better than natural wear’s middle counts as that. Every ratio stays within 1/5 to 5. Where nothing is worn
 * though use would have touched it, only *none* explains it; where something is worn, *none* does not.
 *
 * @param held    the agreement; undefined where nothing or everything alike was painted
 * @param isSharp  whether nothing at all is worn
 * @source judgement throughout: no published measure is known to us
 */
export function wearOdds(held: Agreement | undefined, isSharp: boolean): WearOdds {
  const least = 1 / mostWearRatio;
  if (isSharp) return { natural: least, none: 1, imitated: least };
  // Wear everywhere alike follows no use at all.
  if (held === undefined) return { natural: least, none: least, imitated: 1 };
  const auc = Math.min(held.auc, agrees.natural.mean);
  const density = ({ mean, sd }: { mean: number; sd: number }) => {
    const spread = Math.hypot(sd, held.aucSigma);
    return Math.exp(-0.5 * ((auc - mean) / spread) ** 2) / spread;
  };
  const ratio = Math.min(mostWearRatio, Math.max(least, density(agrees.natural) / density(agrees.imitated)));
  const [natural, imitated] = [ratio / Math.max(1, ratio), 1 / Math.max(1, ratio)];
  return { natural, none: least, imitated };
}
