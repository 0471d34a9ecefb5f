import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import type { PreparedCase } from '../evidence/preparedCase.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { leadingOf, shares } from '../summation/readingPosterior.ts';
import { isConsidered } from './considered.ts';
import { yearSummary } from './highestDensity.ts';
import { massByBin, partPosterior } from './partPosterior.ts';
import { shown } from './shown.ts';
import { standingOf } from './standing.ts';
import type { Weighing } from './weighing.ts';

/** What is asked for first after every finding: the readings, the years, and what became of each part. */
export type FirstAnswer = Pick<Weighing, 'leading' | 'readings' | 'parts'> & {
  years: Omit<Weighing['years'], 'binding'>;
};

/** The readings, the years and the parts: what a finger on the drawing waits for. What each finding weighs takes longer. */
export function firstAnswer(evaluation: Evaluation, input: Pick<CaseToWeigh, 'findings'>): FirstAnswer {
  const { prepared } = evaluation.model.layout;
  return {
    leading: leadingOf(evaluation.posterior),
    readings: readingsTold(shares(evaluation.posterior), prepared),
    years: yearSummary(prepared.axis, massByBin(evaluation.model, evaluation.whole), prepared.yearNow),
    parts: weighParts(evaluation, input),
  };
}

/**
 * The readings as they may be shown, the most probable first.
 *
 * @param intervals  the middle 90 % of each over the redraws; without them its probability stands for both ends
 */
export function readingsTold(
  probability: Readonly<Record<ReadingId, number>>,
  { alterations }: Pick<PreparedCase, 'alterations'>,
  intervals?: Readonly<Record<ReadingId, readonly [number, number]>>,
): Weighing['readings'] {
  return readingIds
    .map((id) => ({
      id,
      probability: shown(probability[id]),
      low: shown(intervals?.[id][0] ?? probability[id]),
      high: shown(intervals?.[id][1] ?? probability[id]),
      ...(isConsidered(id, alterations) ? {} : { considered: false as const }),
    }))
    .sort((a, b) => probability[b.id] - probability[a.id]);
}

/** What became of every part, the most probable origin in words. */
export function weighParts(evaluation: Evaluation, input: Pick<CaseToWeigh, 'findings'>): Weighing['parts'] {
  const { prepared } = evaluation.model.layout;
  return prepared.parts.flatMap((part) => {
    if (part.id === 'whole') return [];
    const { origin, years } = partPosterior(evaluation, part);
    const looked = prepared.looks.filter((look) => look.part === part.id).length;
    // That a sign does not apply says nothing of the part: it is not looked at for that.
    const named = input.findings.filter(
      (finding) => finding.part === part.id && finding.state !== 'does-not-apply',
    ).length;
    const standing = standingOf(origin, Math.max(named, looked), looked);
    return [{ id: part.id, name: part.name, origin, ...standing, years, looked }];
  });
}
