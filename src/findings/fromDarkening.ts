import type { Measurements } from '../knowledge/measurementSchema.ts';
import {
  findingsOn,
  heldWithin,
  inProportion,
  type MeasuredFinding,
  normalDensity,
} from './measuredFinding.ts';
import type { MeasurementFrom } from './measurement.ts';

/**
 * How far a darkening of bare pale wood speaks for natural ageing, and against none; of other surfaces nothing.
 *
 * Method: the lightness lost is normal where the wood has aged and where both places had the same life; the measuring adds its own.
 * It is held within the figures’ bounds and the ratio within the most it may speak. Stain darkens as age does, so that an imitated
 * surface is as likely as an aged one: colour can’t tell these apart.
 *
 * @source knowledge/measurements.yaml, darkening: judgement throughout
 */
export function fromDarkening(
  { surface, darkerByL, sigmaL }: MeasurementFrom<'photo.colour-balance'>,
  { signs, aged, alike, within, mostRatio }: Measurements['darkening'],
): MeasuredFinding[] {
  if (surface === 'other') return [];
  const held = Math.min(within.to, Math.max(within.from, darkerByL));
  const ratio = normalDensity(held, aged, sigmaL) / normalDensity(held, alike, sigmaL);
  const { first: natural, second: none } = inProportion(heldWithin(ratio, mostRatio.value));
  return findingsOn(signs, { natural, none, imitated: natural });
}
