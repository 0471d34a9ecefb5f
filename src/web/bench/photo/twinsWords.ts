import type { photoTwins } from '../../../calculations/photoTwins.ts';
import type { OutputOf } from '../../../calculations/runCalculation.ts';
import { told } from '../../../units/doubt.ts';
import type { Findings } from '../benchContext.ts';

/** What `photo.twins` gives back. */
export type Twins = OutputOf<typeof photoTwins>;

/** Two outlines compared, in words. */
export function twinsWords(twins: Twins, freeSize: boolean, findings: Findings | undefined): string {
  const { rmsMm, maxMm, sigmaMm, better, plain, mirrored, notes } = twins;
  const way = { plain: 'as they are', mirrored: 'one turned over', alike: 'either way round' }[better];
  const unit = freeSize ? 'units of the first tracing' : 'mm';
  const fit = `Laid on each other ${way}, the outlines lie ${rmsMm.toFixed(2)} ${unit} apart in the root mean square, give or take ${told(sigmaMm).toFixed(2)}, and ${maxMm.toFixed(2)} at most (as they are ${plain.rmsMm.toFixed(2)}, one turned over ${mirrored.rmsMm.toFixed(2)}).`;
  const likelihoodRatio = machineToHand(findings);
  const speaks =
    likelihoodRatio === undefined
      ? ''
      : likelihoodRatio > 1.05
        ? ` That is ${likelihoodRatio.toFixed(1)} times as probable of a machine’s work as of a hand’s, by our judgment of both.`
        : likelihoodRatio < 0.95
          ? ` That is ${(1 / likelihoodRatio).toFixed(1)} times as probable of a hand’s work as of a machine’s, by our judgment of both.`
          : ' That is as probable of a hand’s work as of a machine’s.';
  return `${fit}${speaks}${notes.length > 0 ? ` ${notes.join(' ')}` : ''}`;
}

function machineToHand(findings: Findings | undefined): number | undefined {
  const { hand, 'modern-machine': machine } = findings?.findings[0]?.likelihoods ?? {};
  return hand === undefined || machine === undefined ? undefined : machine / hand;
}
