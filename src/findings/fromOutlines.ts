import type { Measurements } from '../knowledge/measurementSchema.ts';
import { findingsOn, heldWithin, type MeasuredFinding } from './measuredFinding.ts';
import type { MeasurementFrom } from './measurement.ts';

type Outlines = Measurements['outlines'];

/** What the likeness of two outlines says of how they were worked. */
export function fromOutlines(measured: MeasurementFrom<'photo.twins'>, figures: Outlines): MeasuredFinding[] {
  const ratio = machineRatio(measured, figures);
  const machine = Math.min(1, ratio);
  return findingsOn(figures.signs, {
    hand: Math.min(1, 1 / ratio),
    'early-machine': machine,
    'modern-machine': machine,
  });
}

/**
 * How far the likeness of two outlines speaks for a machine, and against a hand: machine : hand.
 *
 * Method: what each way of working leaves is log-normal about its middle value; tracing adds its noise by the root of
 * squares, and the measured value scatters about that by its own uncertainty. The density of what was measured is summed
 * over what was left. The ratio sets a machine against hand work, a share of it by a template, and stays within the most that
 * such a likeness may speak.
 *
 * @param measured  rmsMm: distance of the outlines at their best fit; noiseMm: what tracing alone would leave of two equal
 *   outlines; sigmaMm: standard uncertainty of rmsMm
 * @source knowledge/measurements.yaml, outlines: judgement throughout
 */
function machineRatio(
  { rmsMm, noiseMm, sigmaMm }: Omit<MeasurementFrom<'photo.twins'>, 'from'>,
  { leaves, templateShare, mostRatio }: Outlines,
): number {
  // Less than the tracing should leave is as good as nothing left.
  const held = Math.max(rmsMm, noiseMm);
  const spread = Math.hypot(sigmaMm, 0.05);
  const density = ({ medianMm, factor }: Outlines['leaves']['machine']) => {
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
  const hand =
    templateShare.value * density(leaves.template) + (1 - templateShare.value) * density(leaves.eye);
  return heldWithin(density(leaves.machine) / hand, mostRatio.value);
}
