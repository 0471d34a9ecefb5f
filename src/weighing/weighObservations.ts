import { lookedOverWeights, observationWeights, type ReadingWeights } from '../evidence/readingWeights.ts';
import { type ReadingId, readingIds, readingWords } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import type { Masses } from '../summation/readingMasses.ts';
import { againstRest, strongestRival, weightBetween } from './logOdds.ts';
import { weightWords } from './verbalScale.ts';
import type { Weighing } from './weighing.ts';

/** The id under which having looked the piece over is told among the observations. */
export const lookedOverId = 'looked-over';

/**
 * What each of the examiner's own observations does for the leading reading within the whole, and likewise that the piece was
 * looked over and nothing later found. Each speaks of the reading alone, so it is divided out of the masses exactly.
 */
export function weighObservations(evaluation: Evaluation, leading: ReadingId): Weighing['observations'] {
  const { model, masses } = evaluation;
  const { observations, lookedOver, knowledge } = model.layout.prepared;
  const rival = strongestRival(masses, leading);
  const told = (id: string, weights: ReadingWeights) => {
    const without = divided(masses, weights);
    const withinWhole = weightBetween(masses, without, againstRest(leading));
    return {
      id,
      withinWhole,
      againstRival: weightBetween(masses, without, { one: [leading], other: [rival] }),
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

function divided(masses: Masses, weights: ReadingWeights): Masses {
  const readings = Object.fromEntries(
    readingIds.map((id) => [id, masses.readings[id] / weights[id]]),
  ) as Record<ReadingId, number>;
  return { ...masses, readings, total: readingIds.reduce((sum, id) => sum + readings[id], 0) };
}
