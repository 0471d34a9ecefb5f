import type { Measurements } from '../knowledge/measurementSchema.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import {
  findingsOn,
  heldWithin,
  inProportion,
  type MeasuredFinding,
  normalDensity,
} from './measuredFinding.ts';
import type { MeasurementFrom } from './measurement.ts';

type Wear = Measurements['wear'];

/** What painted wear says: of the signs the painted parts can show, and first of the whole where wear goes against use. */
export function fromWear(
  measured: MeasurementFrom<'wear.contact'>,
  figures: Wear,
  signs: Knowledge['signs'],
): MeasuredFinding[] {
  const { kinds, isContrary } = measured;
  const ofParts = figures['where-used'].filter(
    (id) => kinds === undefined || signs[id]?.on.some((on) => kinds.includes(on)),
  );
  const ofWhole = figures['where-not-used'];
  const likelihoods = wearLikelihoods(measured, figures);
  return findingsOn(isContrary ? [...ofWhole, ...ofParts] : [...ofParts, ...ofWhole], likelihoods);
}

/**
 * How far painted wear speaks for natural use, none, or an imitation.
 *
 * Method: the agreement of natural and of made wear is normal, the measure’s own uncertainty added; what agrees better than natural
 * wear’s middle counts as that. Every ratio stays within the most such wear may speak. Where nothing is worn though use would have
 * touched it, only *none* explains it; where something is worn, *none* does not; wear everywhere alike follows no use at all.
 *
 * @source knowledge/measurements.yaml, wear: judgement throughout
 */
function wearLikelihoods(
  { worn, auc, aucSigma }: Pick<MeasurementFrom<'wear.contact'>, 'worn' | 'auc' | 'aucSigma'>,
  { natural, imitated, mostRatio }: Wear,
): { natural: number; none: number; imitated: number } {
  const least = 1 / mostRatio.value;
  if (worn === 'nowhere') return { natural: least, none: 1, imitated: least };
  if (worn === 'everywhere' || auc === null) return { natural: least, none: least, imitated: 1 };
  const held = Math.min(auc, natural.mean);
  const sigma = aucSigma ?? 0;
  const ratio = normalDensity(held, natural, sigma) / normalDensity(held, imitated, sigma);
  const { first, second } = inProportion(heldWithin(ratio, mostRatio.value));
  return { natural: first, none: least, imitated: second };
}
