import type { Measurements } from '../knowledge/measurementSchema.ts';
import { findingsOn, type MeasuredFinding } from './measuredFinding.ts';
import type { MeasurementFrom } from './measurement.ts';

/** What a match of grain says of the signs of one piece or two; nothing where it does not tell or no sign is about grain there. */
export function fromGrain(
  { across, tells, likelihoodRatio }: MeasurementFrom<'photo.grain-match'>,
  figures: Measurements['grain'],
): MeasuredFinding[] {
  if (!tells) return [];
  const [one, two] = likelihoodRatio >= 1 ? [1, 1 / likelihoodRatio] : [likelihoodRatio, 1];
  const { signs, present } = figures.across[across];
  return findingsOn(
    signs,
    present === 'one-piece' ? { present: one, absent: two } : { present: two, absent: one },
  );
}
