import { lookedOverWeights, observationWeights, type ReadingWeights } from '../evidence/readingWeights.ts';
import { type ReadingId, readingIds, readingWords } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import { againstRest, strongestRival, weightBetween } from './logOdds.ts';
import { weightWords } from './verbalScale.ts';
import type { Weighing } from './weighing.ts';

/** The id under which having looked the piece over is told among the observations. */
export const lookedOverId = 'looked-over';

/**
 * What each of the examiner's own observations does for the leading reading within the whole, and likewise that the piece was
 * looked over and nothing later found. Each speaks of the reading alone, so it is divided out of the posterior exactly.
 */
export function weighObservations(evaluation: Evaluation, leading: ReadingId): Weighing['observations'] {
  const { model, posterior } = evaluation;
  const { observations, lookedOver, knowledge } = model.layout.prepared;
  const rival = strongestRival(posterior, leading);
  const told = (id: string, weights: ReadingWeights) => {
    const without = divided(posterior, weights);
    const withinWhole = weightBetween(posterior, without, againstRest(leading));
    return {
      id,
      withinWhole,
      againstRival: weightBetween(posterior, without, { one: [leading], other: [rival] }),
      words:
        withinWhole === null
          ? 'What else was found leaves nothing for it to weigh.'
          : weightWords(withinWhole, readingWords[leading].inSentence, 'another reading'),
    };
  };
  return [
    ...observations.map((each) => told(each.id, observationWeights(each, knowledge.making, model.draw))),
    ...(lookedOver ? [told(lookedOverId, lookedOverWeights(knowledge.making, model.draw))] : []),
  ];
}

function divided(posterior: Posterior, weights: ReadingWeights): Posterior {
  const readings = Object.fromEntries(
    readingIds.map((id) => [id, posterior.readings[id] / weights[id]]),
  ) as Record<ReadingId, number>;
  return { ...posterior, readings, total: readingIds.reduce((sum, id) => sum + readings[id], 0) };
}
