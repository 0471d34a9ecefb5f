import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { woodPanelLoss } from '../../../calculations/woodPanel.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { told } from '../../../units/doubt.ts';
import { formatInches, formatMm } from '../../../units/length.ts';
import { ratioWords } from './roundnessWords.ts';

/** What `wood.panel-loss` gives back. */
export type PanelLossFound = OutputOf<typeof woodPanelLoss>;

/** What a part should have lost, in sentences: by old work and by recent, where it shows, and what the loss seen tells. */
export function panelWords(found: PanelLossFound, wood: string, seenMm: number | undefined): string {
  const { expected, recent, direction, shows, likelihoodRatio } = found;
  const should = `Of old make and ${plainWood(wood)} it should have lost ${both(expected.lossMm)} ${direction}, give or take ${mm(told(expected.sdMm))}; of recent make ${recentWords(recent)}.`;
  const where = `Look for ${shows}.`;
  if (seenMm === undefined || likelihoodRatio === null) return `${should} ${where}`;
  const seen =
    seenMm > expected.rangeMm[1]
      ? 'That is more than the wood would explain: ask whether it was cut, moved or replaced.'
      : seenMm < expected.rangeMm[0]
        ? 'That is less than old work would show: it may have been pushed along, pieced out or renewed.'
        : 'That fits old work.';
  return `${should} Seen is ${both(seenMm)}. ${seen} ${ratioWords(likelihoodRatio)}`;
}

/** `Pine, eastern white` as it is said: eastern white pine. */
function plainWood(name: string): string {
  const [first = '', ...rest] = name.split(', ');
  return [...rest.toReversed(), inSentence(first)].join(' ');
}

function recentWords({ lossMm, sdMm }: PanelLossFound['recent']): string {
  const spread = `give or take ${mm(told(sdMm))}`;
  return lossMm < -0.05
    ? `it would have swelled by ${mm(-lossMm)}, ${spread}`
    : `${mm(Math.max(0, lossMm))}, ${spread}`;
}

function mm(value: number): string {
  return formatMm(value, 1);
}

function both(value: number): string {
  return Math.abs(value) < 0.2 ? mm(value) : `${formatInches(value, { denominator: 32 })} in (${mm(value)})`;
}
