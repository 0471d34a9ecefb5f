import { brierScore, logRatioCost, logScoreBits } from '../../src/evidence/scoring.ts';
import { classes, type Judged } from './judgeCase.ts';

/** The figures of a whole run of validation, over the cases with a definite verdict where it says so. */
export type Summary = {
  definite: number;
  right: number;
  rightInTwo: number;
  /** The same over the cases of which a sign covers two traces or more, and at least half of them. */
  enough: { definite: number; right: number };
  firmAndWrong: number;
  cllr: number | null;
  brier: number | null;
  logScoreBits: number | null;
  coveredTraces: number;
  traces: number;
};

/** Counts and scores the judged cases. A score that is not defined for them is null. */
export function summarize(judged: readonly Judged[]): Summary {
  const definite = judged.filter((each) => each.truth !== undefined);
  const enough = definite.filter(
    ({ coveredTraces, traces }) => coveredTraces >= 2 && coveredTraces >= traces / 2,
  );
  const forecasts = definite.map((each) => ({
    probabilities: classes.map((id) => each.probabilities[id]),
    truth: each.truth === undefined ? -1 : classes.indexOf(each.truth),
  }));
  // A piece put together from old ones is neither of the period nor a later copy.
  const sides = definite.filter((each) => each.truth !== 'made-up');
  const isPeriod = (each: Judged) => each.truth !== 'later-copy' && each.truth !== 'made-to-deceive';
  const logs = (period: boolean) =>
    sides.filter((each) => isPeriod(each) === period).map((each) => each.logRatio);
  const sum = (of: (each: Judged) => number) => judged.reduce((total, each) => total + of(each), 0);
  return {
    definite: definite.length,
    right: definite.filter((each) => each.right).length,
    enough: { definite: enough.length, right: enough.filter((each) => each.right).length },
    rightInTwo: definite.filter((each) => each.rightInTwo).length,
    firmAndWrong: judged.filter((each) => each.firm && !each.right).length,
    cllr: logRatioCost(logs(true), logs(false)) ?? null,
    brier: definite.length === 0 ? null : brierScore(forecasts),
    logScoreBits: definite.length === 0 ? null : logScoreBits(forecasts),
    coveredTraces: sum((each) => each.coveredTraces),
    traces: sum((each) => each.traces),
  };
}
