import type { Measurements } from '../knowledge/measurementSchema.ts';
import type { Form } from '../knowledge/schema.ts';
import { normalBelow } from '../wear/bodyMeasures.ts';
import { findingsOn, type MeasuredFinding } from './measuredFinding.ts';
import type { MeasurementFrom } from './measurement.ts';

/**
 * How far the seats’ difference speaks for an armchair no wider than a side chair; nothing for a form whose arms can’t have been added.
 *
 * Method: present if the armchairs’ seats are truly less wider than the rule asks, absent if they are wider than that; by the normal
 * share below and above it, the uncertainty and the maker’s hand together; either alike beforehand.
 *
 * @source the rule: knowledge/measurements.yaml, seat-width (common practice)
 */
export function fromSeatWidth(
  { differenceMm, sigmaMm, handMm }: MeasurementFrom<'sets.likeness'>,
  { signs, alteration, widerMm, mostShare }: Measurements['seat-width'],
  form: Pick<Form, 'alterations'> | undefined,
): MeasuredFinding[] {
  if (form !== undefined && !form.alterations.includes(alteration)) return [];
  const below = normalBelow((widerMm.value - differenceMm) / Math.hypot(sigmaMm, handMm));
  const present = Math.min(mostShare.value, Math.max(1 - mostShare.value, below));
  return findingsOn(signs, { present, absent: 1 - present });
}
