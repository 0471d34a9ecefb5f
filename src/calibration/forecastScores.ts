import { brierScore, logScoreBits } from './scoring.ts';

/** A probability given beforehand, and whether it came true. */
export type Forecast = { probability: number; came: boolean };

/** How good probabilities were; all but the log scores lie within 0 and 1, skill at most 1. */
export type ForecastScores = {
  brier: number;
  /** How far what came true lies from what was said, group by group of equal probabilities: 0 is best. */
  reliability: number;
  /** How far the groups differ from the share over all: more is better. */
  resolution: number;
  /** Brier = reliability − resolution + uncertainty. */
  uncertainty: number;
  /** 1 − Brier / uncertainty; undefined where all came true, or none. */
  skill: number | undefined;
  /** Infinite where something ruled out came true. */
  logLossBits: number;
};

/**
 * Scores probabilities of one event each, and splits the Brier score.
 *
 * @param forecasts  at least one
 * @source Brier, Monthly Weather Review 78 (1950); the split: Murphy, Journal of Applied Meteorology 12 (1973), from memory
 */
export function forecastScores(forecasts: readonly Forecast[]): ForecastScores {
  const n = forecasts.length;
  const asked = forecasts.map(({ probability, came }) => ({
    probabilities: [1 - probability, probability],
    truth: came ? 1 : 0,
  }));
  const brier = brierScore(asked);
  const base = forecasts.filter(({ came }) => came).length / n;
  const groups = new Map<number, { count: number; came: number }>();
  for (const { probability, came } of forecasts) {
    const group = groups.get(probability) ?? { count: 0, came: 0 };
    groups.set(probability, { count: group.count + 1, came: group.came + (came ? 1 : 0) });
  }
  const over = (term: (said: number, share: number) => number) =>
    [...groups].reduce((sum, [said, { count, came }]) => sum + (count / n) * term(said, came / count), 0);
  const uncertainty = base * (1 - base);
  return {
    brier,
    reliability: over((said, share) => (said - share) ** 2),
    resolution: over((_, share) => (share - base) ** 2),
    uncertainty,
    skill: uncertainty > 0 ? 1 - brier / uncertainty : undefined,
    logLossBits: logScoreBits(asked),
  };
}
