import type { Measurements } from '../knowledge/measurementSchema.ts';
import { normalBelow } from '../wear/bodyMeasures.ts';
import { findingsOn, type MeasuredFinding } from './measuredFinding.ts';
import type { MeasurementFrom } from './measurement.ts';

/**
 * How far the seats’ difference speaks for an armchair no wider than a side chair.
 *
 * Method: present if the armchairs’ seats are truly less wider than the rule asks, absent if they are wider than that; by the normal
 * share below and above it, the uncertainty and the maker’s hand together; either alike beforehand.
 *
 * @source the rule: knowledge/measurements.yaml, seat-width (common practice)
 */
export function fromSeatWidth(
  { differenceMm, sigmaMm, handMm }: MeasurementFrom<'sets.likeness'>,
  { signs, widerMm, mostShare }: Measurements['seat-width'],
): MeasuredFinding[] {
  const below = normalBelow((widerMm.value - differenceMm) / Math.hypot(sigmaMm, handMm));
  const present = Math.min(mostShare.value, Math.max(1 - mostShare.value, below));
  return findingsOn(signs, { present, absent: 1 - present });
}
