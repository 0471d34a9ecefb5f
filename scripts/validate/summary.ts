import { ratioCalibration } from '../../src/calibration/ratioCalibration.ts';
import { brierScore, logScoreBits } from '../../src/calibration/scoring.ts';
import { seededRandom } from '../../src/ground/seededRandom.ts';
import { type MakingKind, makingKinds } from '../../src/piece/readings.ts';
import { classes, type Judged, type VerdictClass } from './judgeCase.ts';

/** The figures of a whole run of validation, over the cases with a definite verdict where it says so. */
export type Summary = {
  definite: number;
  right: number;
  rightInTwo: number;
  /** The same over the cases of which a sign covers two traces or more, and at least half of them. */
  enough: { definite: number; right: number };
  firm: number;
  firmAndWrong: number;
  /** How the piece came to be, asked by itself; and the condition of the pieces that are of the period, asked as if that were known. */
  making: { right: number; firm: number; firmAndWrong: number; logScoreBits: number | null };
  condition: { definite: number; right: number; logScoreBits: number | null };
  cllr: number | null;
  /** What the same order of ratios would cost on the best scale there is. */
  cllrMin: number | null;
  brier: number | null;
  logScoreBits: number | null;
  /** The middle 90 % over cases drawn anew with replacement. */
  intervals: { right: [number, number]; logScoreBits: [number, number] } | null;
  coveredTraces: number;
  /** Of the covered, those whose observation has one word throughout: accounted for, though they tell nothing. */
  silentTraces: number;
  traces: number;
};

const kindOfClass: Record<VerdictClass, MakingKind> = {
  'period-intact': 'of-the-period',
  'period-repaired': 'of-the-period',
  'period-altered': 'of-the-period',
  'made-up': 'put-together',
  'later-copy': 'later-copy',
  'made-to-deceive': 'to-deceive',
};
const conditions = classes.filter((id) => kindOfClass[id] === 'of-the-period');

/** Counts and scores the judged cases. A score that is not defined for them is null. */
export function summarize(judged: readonly Judged[]): Summary {
  const definite = judged.flatMap((each) =>
    each.truth === undefined ? [] : [{ ...each, truth: each.truth }],
  );
  const enough = definite.filter(
    ({ coveredTraces, traces }) => coveredTraces >= 2 && coveredTraces >= traces / 2,
  );
  const ofPeriod = definite.filter(({ truth }) => kindOfClass[truth] === 'of-the-period');
  const logs = (kinds: readonly MakingKind[]) =>
    definite.filter(({ truth }) => kinds.includes(kindOfClass[truth])).map((each) => each.logRatio);
  // A piece put together from old ones is neither of the period nor a later copy.
  const ratios = ratioCalibration(logs(['of-the-period']), logs(['later-copy', 'to-deceive']));
  const sum = (of: (each: Judged) => number) => judged.reduce((total, each) => total + of(each), 0);
  const score = (asked: Forecast[]) => (asked.length === 0 ? null : logScoreBits(asked));
  const forecasts = definite.map((each) => forecastOf(each.probabilities, classes, each.truth));
  return {
    definite: definite.length,
    right: definite.filter((each) => each.right).length,
    enough: { definite: enough.length, right: enough.filter((each) => each.right).length },
    rightInTwo: definite.filter((each) => each.rightInTwo).length,
    firm: judged.filter((each) => each.firm).length,
    firmAndWrong: judged.filter((each) => each.firm && !each.right).length,
    making: {
      right: definite.filter((each) => each.making.leading === kindOfClass[each.truth]).length,
      firm: judged.filter((each) => each.making.firm).length,
      firmAndWrong: judged.filter(
        ({ making, truth }) => making.firm && (truth === undefined || making.leading !== kindOfClass[truth]),
      ).length,
      logScoreBits: score(
        definite.map((each) => forecastOf(makingOf(each), makingKinds, kindOfClass[each.truth])),
      ),
    },
    condition: {
      definite: ofPeriod.length,
      right: ofPeriod.filter(
        (each) =>
          each.truth ===
          conditions.reduce((best, id) => (each.probabilities[id] > each.probabilities[best] ? id : best)),
      ).length,
      logScoreBits: score(ofPeriod.map((each) => forecastOf(each.probabilities, conditions, each.truth))),
    },
    cllr: ratios?.cllr ?? null,
    cllrMin: ratios?.cllrMin ?? null,
    brier: definite.length === 0 ? null : brierScore(forecasts),
    logScoreBits: score(forecasts),
    intervals: definite.length === 0 ? null : resampled(definite, forecasts),
    coveredTraces: sum((each) => each.coveredTraces),
    silentTraces: sum((each) => each.silentTraces),
    traces: sum((each) => each.traces),
  };
}

type Forecast = { probabilities: number[]; truth: number };

/** The probabilities of some answers, made to sum to 1, and which of them came true. */
function forecastOf<Id extends string>(
  probabilities: Readonly<Record<Id, number>>,
  ids: readonly Id[],
  truth: NoInfer<Id>,
): Forecast {
  const total = ids.reduce((sum, id) => sum + probabilities[id], 0);
  return { probabilities: ids.map((id) => probabilities[id] / total), truth: ids.indexOf(truth) };
}

function makingOf({ probabilities }: Judged): Record<MakingKind, number> {
  return Object.fromEntries(
    makingKinds.map((kind) => [
      kind,
      classes.reduce((sum, id) => (kindOfClass[id] === kind ? sum + probabilities[id] : sum), 0),
    ]),
  ) as Record<MakingKind, number>;
}

/** The middle 90 % of the share right and of the log score over 2000 draws of as many cases, with a seed. */
function resampled(judged: readonly Judged[], forecasts: readonly Forecast[]) {
  const random = seededRandom(1);
  const draws = Array.from({ length: 2000 }, () => {
    const drawn = judged.map(() => Math.floor(random() * judged.length));
    return {
      right: drawn.filter((i) => judged[i]?.right === true).length / judged.length,
      bits: logScoreBits(drawn.map((i) => forecasts[i] as Forecast)),
    };
  });
  const middle = (values: number[]): [number, number] => {
    const sorted = values.sort((a, b) => a - b);
    return [sorted[100] as number, sorted[1899] as number];
  };
  return {
    right: middle(draws.map((each) => each.right)),
    logScoreBits: middle(draws.map((each) => each.bits)),
  };
}
