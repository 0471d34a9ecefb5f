import { demonstratedRatio } from '../calibration/demonstratedRatio.ts';
import { publishedRatios } from '../calibration/publishedRatios.ts';

/** How far the ratios have been shown to hold on cases whose verdict is in print, in a sentence. */
export function demonstratedWords({ period, later } = publishedRatios): string {
  const forPeriod = demonstratedRatio(period, later);
  const forLater = demonstratedRatio(opposite(later), opposite(period));
  const cases = `Held against ${period.length + later.length} pieces whose examination and verdict are in print`;
  return `${cases}, likelihood ratios held ${upTo(forPeriod)} for period work and ${upTo(forLater)} for later work; a stronger weight rests on judged figures and has not been shown.`;
}

function opposite(logs: readonly number[]): number[] {
  return logs.map((log) => -log);
}

/** Rounded down: a bound is not to be overstated. */
function upTo(ratio: number): string {
  return ratio < 2 ? 'not even to 2 to 1' : `up to about ${Math.floor(ratio)} to 1`;
}
