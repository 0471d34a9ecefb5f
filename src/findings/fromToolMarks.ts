import { mean } from '../ground/statistics.ts';
import type { Measurements } from '../knowledge/measurementSchema.ts';
import { findingsOn, type MeasuredFinding } from './measuredFinding.ts';
import type { MeasurementFrom } from './measurement.ts';

/**
 * How probable tool marks make each sign of them, the most probable first; nothing where every kind is as probable.
 *
 * Method: the mean likelihood of the kinds of mark that are the sign against the mean of the others.
 *
 * @source which kinds are which sign: knowledge/measurements.yaml, tool-marks
 */
export function fromToolMarks(
  { likelihoods }: MeasurementFrom<'photo.toolmarks'>,
  { signs }: Measurements['tool-marks'],
): MeasuredFinding[] {
  const all = Object.entries(likelihoods);
  if (all.every(([, each]) => each === all[0]?.[1])) return [];
  return signs
    .flatMap(({ sign, kinds, besides }) => {
      const meanOf = (isIt: boolean) =>
        mean(all.filter(([kind]) => kinds.some((each) => each === kind) === isIt).map(([, each]) => each));
      const [present, absent] = [meanOf(true), meanOf(false)];
      return findingsOn([sign], { present, absent }).map((finding) => ({
        ratio: present / absent,
        finding: { ...finding, ...(besides === undefined ? {} : { besides }) },
      }));
    })
    .toSorted((a, b) => b.ratio - a.ratio)
    .map(({ finding }) => finding);
}
