import { poolAdjacent } from './poolAdjacent.ts';
import { logRatioCost } from './scoring.ts';

/** How good likelihood ratios were, and how much of what they cost is their scale rather than their order. */
export type RatioCalibration = {
  /** Infinite where a ratio ruled out what was true. */
  cllr: number;
  /** What the same order would cost on the best scale there is. */
  cllrMin: number;
  /** Each ratio found, rising, with the share of true cases that the best rising scale gives it. */
  pooled: { logRatio: number; posterior: number }[];
  /** Shares of the cases on whose wrong side the ratio stood. */
  misleading: { whenTrue: number; whenFalse: number };
};

/**
 * Splits the cost of likelihood ratios into what their order costs and what their scale costs.
 *
 * Method: ratios are sorted, equal ones taken together, and the truths made to rise by pooling; the pooled share p becomes
 * the ratio p / (1 − p) over true : false, whose cost is cllrMin.
 *
 * @returns undefined when one side has no case
 * @source Brümmer and du Preez, Computer Speech and Language 20 (2006) 230–275
 */
export function ratioCalibration(
  whenTrue: readonly number[],
  whenFalse: readonly number[],
): RatioCalibration | undefined {
  const cllr = logRatioCost(whenTrue, whenFalse);
  if (cllr === undefined) return undefined;
  const tallies = new Map<number, { yes: number; no: number }>();
  const tally = (logRatio: number) => tallies.get(logRatio) ?? { yes: 0, no: 0 };
  for (const each of whenTrue) tallies.set(each, { ...tally(each), yes: tally(each).yes + 1 });
  for (const each of whenFalse) tallies.set(each, { ...tally(each), no: tally(each).no + 1 });
  const rising = [...tallies].sort((a, b) => a[0] - b[0]);
  const { fit } = poolAdjacent(
    rising.map(([, { yes, no }]) => yes / (yes + no)),
    rising.map(([, { yes, no }]) => yes + no),
  );
  const pooled = rising.map(([logRatio], index) => ({ logRatio, posterior: fit[index] as number }));
  const priorLogOdds = Math.log(whenTrue.length / whenFalse.length);
  const scaled = new Map(
    pooled.map(({ logRatio, posterior }) => [
      logRatio,
      Math.log(posterior) - Math.log1p(-posterior) - priorLogOdds,
    ]),
  );
  const rescaled = (logs: readonly number[]) => logs.map((each) => scaled.get(each) as number);
  return {
    cllr,
    cllrMin: logRatioCost(rescaled(whenTrue), rescaled(whenFalse)) as number,
    pooled,
    misleading: {
      whenTrue: whenTrue.filter((each) => each < 0).length / whenTrue.length,
      whenFalse: whenFalse.filter((each) => each > 0).length / whenFalse.length,
    },
  };
}
