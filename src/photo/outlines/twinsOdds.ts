/** What two parts of one pattern differ by, root mean square in mm: the middle value and the factor of one standard deviation. */
export const leftBy = {
  /** Copied by a lathe, a moulder or a router. */
  machine: { medianMm: 0.25, factor: 2 },
  /** Sawn to one template and finished by hand. */
  template: { medianMm: 0.9, factor: 1.8 },
  /** Cut by eye after one another. */
  eye: { medianMm: 2.5, factor: 1.8 },
} as const;

/** How much of hand work followed a template. */
export const templateShare = 0.7;

/** No likeness speaks more than so many times for one side: wear, shrinkage and repair come between. A judgement. */
export const mostTwinsRatio = 10;

/** How likely each way of working was to leave two outlines so far apart; the largest is 1. */
export type TwinsOdds = { machine: number; template: number; eye: number; likelihoodRatio: number };

/**
 * How far the likeness of two outlines speaks for a machine, and against a hand.
 *
 * Method: what each way of working leaves is log-normal about its middle value; tracing adds its noise by the root of
 * squares, and the measured value scatters about that by its own uncertainty. The density of what was measured is summed
 * over what was left. The ratio sets a machine against hand work, seven tenths of it by a template, and stays within 1/10 to 10.
 *
 * @param rmsMm       distance of the outlines at their best fit
 * @param noiseMm     what tracing alone would leave of two equal outlines
 * @param rmsSigmaMm  standard uncertainty of rmsMm
 * @source judgement throughout: no published measure of it is known to us
 */
export function twinsOdds(rmsMm: number, noiseMm: number, rmsSigmaMm: number): TwinsOdds {
  // Less than the tracing should leave is as good as nothing left.
  const held = Math.max(rmsMm, noiseMm);
  const density = ({ medianMm, factor }: { medianMm: number; factor: number }) => {
    const spread = Math.hypot(rmsSigmaMm, 0.05);
    let [sum, weights] = [0, 0];
    for (let step = -60; step <= 60; step++) {
      const z = step / 15;
      const weight = Math.exp(-0.5 * z * z);
      const left = medianMm * factor ** z;
      sum += weight * Math.exp(-0.5 * ((held - Math.hypot(left, noiseMm)) / spread) ** 2);
      weights += weight;
    }
    // A little of everything, so that nothing is impossible.
    return sum / weights + 1e-4;
  };
  const [machine, template, eye] = [density(leftBy.machine), density(leftBy.template), density(leftBy.eye)];
  const hand = templateShare * template + (1 - templateShare) * eye;
  const most = Math.max(machine, template, eye);
  return {
    machine: machine / most,
    template: template / most,
    eye: eye / most,
    likelihoodRatio: Math.min(mostTwinsRatio, Math.max(1 / mostTwinsRatio, machine / hand)),
  };
}
