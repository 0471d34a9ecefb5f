import type { CaseToWeigh } from '../src/evidence/caseToWeigh.ts';
import { bestDraw } from '../src/evidence/figures.ts';
import { prepareCase } from '../src/evidence/prepareCase.ts';
import { finished } from '../src/ground/steps.ts';
import type { Knowledge } from '../src/knowledge/schema.ts';
import { evaluate } from '../src/summation/evaluate.ts';
import type { Evaluation } from '../src/summation/evaluation.ts';
import { layOut } from '../src/summation/makeLayout.ts';
import { fixModel } from '../src/summation/model.ts';
import { leadingOf } from '../src/summation/readingPosterior.ts';
import { shopProbabilities } from '../src/summation/shopPosterior.ts';
import { nextLooks } from '../src/weighing/nextLooks.ts';
import { partPosterior } from '../src/weighing/partPosterior.ts';
import { reasonGroups } from '../src/weighing/reasonGroups.ts';
import { redraws } from '../src/weighing/redraws.ts';
import { weighCase } from '../src/weighing/weighCase.ts';
import { weighLooks } from '../src/weighing/weights.ts';
import { drawnCase, sideboardCase, withShops } from './drawnCase.ts';

export type Row = { what: string; medianMs: number; leastMs: number; runs: number };

const yearNow = 2026;

/** Times what is asked of a weighing, on the sideboard of the aims and on an armchair, and how the cost grows. */
export function weighTimes(
  given: Knowledge,
  runs: number,
  now: () => number,
  short: boolean,
): { title: string; rows: Row[] }[] {
  const full = withShops(given, 'sideboard', 20, 3);
  return [
    {
      title: 'Sideboard, 15 parts, 150 findings, 20 shops',
      rows: stepsOf(full, sideboardCase(full), runs, now),
    },
    { title: 'Armchair, 60 findings', rows: stepsOf(given, armchairCase(given), runs, now) },
    ...(short
      ? []
      : [
          { title: 'The answer in short, as the sideboard grows', rows: growth(given, runs, now) },
          {
            title: 'The largest forms, 90 findings: readings, years, shops and part origins',
            rows: ['desk-and-bookcase', 'high-chest', 'chest-on-chest'].map((form) => {
              const input = drawnCase(given, { form, findings: 90, seed: 5, claim: {} });
              return timed(form, Math.ceil(runs / 10), now, () => answer(input, given));
            }),
          },
        ]),
  ];
}

/** An armchair with 60 findings on all its parts. */
export function armchairCase(knowledge: Knowledge): CaseToWeigh {
  const claim = { period: [1755, 1795] as [number, number], place: 'Philadelphia' };
  return drawnCase(knowledge, { form: 'armchair', findings: 60, seed: 7, claim });
}

/** Readings, years and shops, from the case as it is entered. */
function shortAnswer(input: CaseToWeigh, knowledge: Knowledge): Evaluation {
  const ready = prepareCase(input, knowledge, yearNow);
  if (!ready.ok) throw new Error('the case of the benchmark was refused');
  const evaluation = evaluate(fixModel(layOut(ready.prepared), bestDraw()));
  shopProbabilities(evaluation.model, evaluation.whole, evaluation.posterior.total);
  return evaluation;
}

/** The same with the origin and the years of every part. */
function answer(input: CaseToWeigh, knowledge: Knowledge): void {
  const evaluation = shortAnswer(input, knowledge);
  for (const part of evaluation.model.layout.prepared.parts) partPosterior(evaluation, part);
}

function stepsOf(knowledge: Knowledge, input: CaseToWeigh, runs: number, now: () => number): Row[] {
  const ready = prepareCase(input, knowledge, yearNow);
  if (!ready.ok) throw new Error('the case of the benchmark was refused');
  const { prepared } = ready;
  const layout = layOut(prepared);
  const few = Math.ceil(runs / 10);
  const weigh = (more: Partial<CaseToWeigh>) => () =>
    void weighCase({ ...input, ...more }, knowledge, { yearNow });
  return [
    timed('readings, years and shops, from the case', runs, now, () => void shortAnswer(input, knowledge)),
    timed('readings, years, shops and part origins, from the case', runs, now, () =>
      answer(input, knowledge),
    ),
    timed(
      'readings, years and shops, once laid out',
      runs,
      now,
      () => void evaluate(fixModel(layout, bestDraw())),
    ),
    timed('500 redraws', 1, now, () => void redraws(layout, 'period-intact', 'of-the-period', 500, 1)),
    timed('weights of all findings, once summed', few, now, () => {
      const evaluation = evaluate(fixModel(layout, bestDraw()));
      finished(weighLooks(evaluation, leadingOf(evaluation.posterior)));
    }),
    timed('and those of findings of one cause together', few, now, () => {
      const evaluation = evaluate(fixModel(layout, bestDraw()));
      const leading = leadingOf(evaluation.posterior);
      finished(reasonGroups(evaluation, finished(weighLooks(evaluation, leading)), leading));
    }),
    timed('all next looks', few, now, () => void nextLooks(prepared, new Set())),
    timed('and weights, contradictions, alterations (a quick weighing)', few, now, weigh({ quick: true })),
    timed('everything, no redraws', 3, now, weigh({ draws: 0 })),
    timed('everything, 500 redraws', 1, now, weigh({ draws: 500 })),
  ];
}

function growth(given: Knowledge, runs: number, now: () => number): Row[] {
  const sizes = [
    ...[10, 50, 100, 150, 200].map((findings) => ({ findings, parts: 15, shops: 20 })),
    ...[5, 10, 19].map((parts) => ({ findings: 100, parts, shops: 20 })),
    ...[0, 5, 10, 40].map((shops) => ({ findings: 150, parts: 15, shops })),
  ];
  return sizes.map(({ findings, parts, shops }) => {
    const knowledge = withShops(given, 'sideboard', shops, 3);
    const input = sideboardCase(knowledge, findings, parts);
    const what = `${input.findings.length} findings on ${parts} parts, ${shops} shops`;
    return timed(what, Math.ceil(runs / 4), now, () => answer(input, knowledge));
  });
}

/** Milliseconds of so many runs, after some that are not counted (none where it runs once). */
export function timed(what: string, runs: number, now: () => number, act: () => void): Row {
  for (let i = 0; i < Math.min(20, runs - 1); i++) act();
  const times = Array.from({ length: runs }, () => {
    const from = now();
    act();
    return now() - from;
  }).sort((a, b) => a - b);
  return { what, medianMs: times[Math.floor(runs / 2)] ?? 0, leastMs: times[0] ?? 0, runs };
}
