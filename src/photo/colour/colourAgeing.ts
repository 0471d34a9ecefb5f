/** How probable each cause of a difference in lightness is to leave what was measured, on a common scale: the largest is 1. */
export type AgeingLikelihoods = { natural: number; none: number; imitated: number };

/** Figures of judgement, in L of CIELAB: how much darker wood is where light, air and hands reach it than where they do not. */
export const darkening = {
  /** Pale wood left bare for a century or more. */
  aged: { mean: 8, sd: 5 },
  /** Two places of one board that have had the same life. */
  alike: { mean: 0, sd: 3 },
} as const;

/** No difference of colour speaks more than so many times for one cause: a judgement. */
export const mostRatio = 5;

/**
 * How far a darkening of bare pale wood speaks for natural ageing, and against none.
 *
 * Method: the lightness lost is normal under each, about 8 ± 5 where the wood has aged and 0 ± 3 where both places had the
 * same life; the measuring adds its own. It is held within −2 to 16 and the ratio within 1/5 to 5, since the figures are judged.
 * Stain darkens as age does, so that an imitated surface is as likely as an aged one: colour can't tell these apart.
 *
 * @param darkerByL  L of the protected place − L of the exposed one
 * @source judgement throughout; holds for pale woods left bare (pine, poplar, oak, maple), not for mahogany or walnut, which
 *         fade in light, nor under finish
 */
export function ageingLikelihoods(darkerByL: number, sigmaL: number): AgeingLikelihoods {
  const held = Math.min(16, Math.max(-2, darkerByL));
  const density = ({ mean, sd }: { mean: number; sd: number }) => {
    const spread = Math.hypot(sd, sigmaL);
    return Math.exp(-0.5 * ((held - mean) / spread) ** 2) / spread;
  };
  const ratio = Math.min(
    mostRatio,
    Math.max(1 / mostRatio, density(darkening.aged) / density(darkening.alike)),
  );
  const natural = ratio / Math.max(1, ratio);
  return { natural, none: 1 / Math.max(1, ratio), imitated: natural };
}
