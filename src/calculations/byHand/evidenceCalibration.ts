import { z } from 'zod';
import { forecastScores } from '../../calibration/forecastScores.ts';
import { logisticScale } from '../../calibration/logisticScale.ts';
import { poolAdjacent } from '../../calibration/poolAdjacent.ts';
import { ratioCalibration } from '../../calibration/ratioCalibration.ts';
import type { Fault } from '../../ground/fault.ts';
import { defineCalculation } from '../define.ts';

const most = 100_000;
const ratio = z.union([z.number().min(0), z.literal('infinite')]);
const finiteNumber = z.number().min(-1e12).max(1e12);
const bounded = z.union([z.number(), z.literal('infinite')]);

const input = z.strictObject({
  /** Likelihood ratios where the first-named side was true, and where it was false; 0 and "infinite" may stand here. */
  ratios: z
    .strictObject({ whenTrue: z.array(ratio).min(1).max(most), whenFalse: z.array(ratio).min(1).max(most) })
    .optional(),
  /** The same as natural logarithms. */
  logRatios: z
    .strictObject({
      whenTrue: z.array(finiteNumber).min(1).max(most),
      whenFalse: z.array(finiteNumber).min(1).max(most),
    })
    .optional(),
  forecasts: z
    .array(z.strictObject({ probability: z.number().min(0).max(1), came: z.boolean() }))
    .min(1)
    .max(most)
    .optional(),
  /** Scores on any scale, to be turned into probabilities. */
  scores: z
    .array(z.strictObject({ score: finiteNumber, came: z.boolean() }))
    .min(2)
    .max(most)
    .optional(),
  /** A row of values that should nowhere fall. */
  rising: z
    .strictObject({
      values: z.array(finiteNumber).min(1).max(most),
      weights: z.array(z.number().positive().max(1e12)).optional(),
    })
    .optional(),
});
type Input = z.infer<typeof input>;

/** `evidence.calibration`: see its own fields. */
export const evidenceCalibration = defineCalculation({
  id: 'evidence.calibration',
  answers: 'How good were likelihood ratios, probabilities or scores, once the truth was known?',
  method:
    'Give one or more of ratios or logRatios, forecasts, scores and rising. Ratios: cllr is the mean cost of the ratios in bits, 0 perfect, 1 as good as saying nothing, above 1 misleading, "infinite" where a ratio ruled out what was true; ' +
    'cllrMin is what the same order costs on the best rising scale (pool adjacent violators, equal ratios taken together), cllrCal the rest; misleading is the share of ratios on the wrong side of 1. Forecasts: the Brier score and its split ' +
    'over groups of equal probabilities, brier = reliability − resolution + uncertainty; skill against the share over all, null where all came true or none; log loss. Scores: logistic regression by maximum likelihood; logRatios are log odds less those of the cases. ' +
    'rising: the nearest row that nowhere falls. A few dozen cases settle none of these closely.',
  source:
    'Brümmer and du Preez, Computer Speech and Language 20 (2006), for cllr; Brier (1950) and Murphy (1973); Ayer and others (1955) for pooling; the last two from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    ratios: z
      .strictObject({
        cllr: bounded,
        cllrMin: z.number(),
        cllrCal: bounded,
        pooled: z.array(
          z.strictObject({
            logRatio: z.union([z.number(), z.enum(['infinite', '-infinite'])]),
            posterior: z.number(),
          }),
        ),
        misleading: z.strictObject({ whenTrue: z.number(), whenFalse: z.number() }),
      })
      .optional(),
    forecasts: z
      .strictObject({
        brier: z.number(),
        reliability: z.number(),
        resolution: z.number(),
        uncertainty: z.number(),
        skill: z.number().nullable(),
        logLossNats: bounded,
        logLossBits: bounded,
      })
      .optional(),
    scores: z
      .strictObject({
        intercept: z.number(),
        slope: z.number(),
        probabilities: z.array(z.number()),
        logRatios: z.array(z.number()),
      })
      .optional(),
    rising: z.strictObject({ fit: z.array(z.number()), blocks: z.array(z.int()) }).optional(),
  }),
  example: {
    ratios: { whenTrue: [10, 3, 1.5, 0.5], whenFalse: [0.1, 0.4, 0.9, 2] },
    forecasts: [
      { probability: 0.9, came: true },
      { probability: 0.3, came: false },
    ],
  },
  run: (asked) => {
    const faults = faultsOf(asked);
    if (faults.length > 0) return { ok: false, faults };
    const scores = asked.scores && scaled(asked.scores);
    if (asked.scores && scores === undefined) return { ok: false, faults: [parted] };
    return {
      ok: true,
      output: {
        ...ratiosOf(asked),
        ...(asked.forecasts ? { forecasts: scoresOf(asked.forecasts) } : {}),
        ...(scores ? { scores } : {}),
        ...(asked.rising ? { rising: poolAdjacent(asked.rising.values, asked.rising.weights) } : {}),
      },
    };
  },
});

function ratiosOf({ ratios, logRatios }: Input) {
  const logs = (list: readonly (number | 'infinite')[]) =>
    list.map((each) => (each === 'infinite' ? Number.POSITIVE_INFINITY : Math.log(each)));
  const sides =
    logRatios ??
    (ratios ? { whenTrue: logs(ratios.whenTrue), whenFalse: logs(ratios.whenFalse) } : undefined);
  const found = sides && ratioCalibration(sides.whenTrue, sides.whenFalse);
  if (found === undefined) return {};
  return {
    ratios: {
      cllr: finite(found.cllr),
      cllrMin: found.cllrMin,
      cllrCal: finite(found.cllr - found.cllrMin),
      pooled: found.pooled.map(({ logRatio, posterior }) => ({
        logRatio: logRatio === Number.NEGATIVE_INFINITY ? ('-infinite' as const) : finite(logRatio),
        posterior,
      })),
      misleading: found.misleading,
    },
  };
}

function scoresOf(forecasts: NonNullable<Input['forecasts']>) {
  const { skill, logLossBits, ...found } = forecastScores(forecasts);
  return {
    ...found,
    skill: skill ?? null,
    logLossNats: finite(logLossBits * Math.LN2),
    logLossBits: finite(logLossBits),
  };
}

function scaled(scores: NonNullable<Input['scores']>) {
  const line = logisticScale(
    scores.map(({ score }) => score),
    scores.map(({ came }) => came),
  );
  if (line === undefined) return undefined;
  const yes = scores.filter(({ came }) => came).length;
  const prior = Math.log(yes / (scores.length - yes));
  const logOdds = scores.map(({ score }) => line.intercept + line.slope * score);
  return {
    ...line,
    probabilities: logOdds.map((each) => 1 / (1 + Math.exp(-each))),
    logRatios: logOdds.map((each) => each - prior),
  };
}

/** JSON has no infinity, so that the word stands for it. */
function finite(value: number): number | 'infinite' {
  return value === Number.POSITIVE_INFINITY ? 'infinite' : value;
}

function faultsOf({ ratios, logRatios, forecasts, scores, rising }: Input): Fault[] {
  const fault = (path: string, message: string): Fault[] => [{ code: 'evidence.calibration', path, message }];
  if (ratios && logRatios)
    return fault('logRatios', 'Ratios stand here twice: give them as ratios or as logRatios, not both.');
  if (!ratios && !logRatios && !forecasts && !scores && !rising)
    return fault('', 'There is nothing to judge: give ratios, logRatios, forecasts, scores or rising.');
  if (rising?.weights && rising.weights.length !== rising.values.length)
    return fault(
      'rising.weights',
      `There are ${rising.values.length} values and ${rising.weights.length} weights: give one weight for each value.`,
    );
  return [];
}

const parted: Fault = {
  code: 'evidence.calibration-parted',
  path: 'scores',
  message:
    'One bound on the score parts all that came true from all that did not, so that no scale can be told: add cases of both sides that lie among each other.',
};
