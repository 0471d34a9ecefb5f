import { evaluate } from '../src/evidence/evaluation.ts';
import { explicitNetwork } from '../src/evidence/explicitNetwork.ts';
import { bestDraw } from '../src/evidence/figures.ts';
import { layOut } from '../src/evidence/layout.ts';
import { fixModel } from '../src/evidence/model.ts';
import { nextLooks } from '../src/evidence/nextLooks.ts';
import { prepareCase } from '../src/evidence/prepareCase.ts';
import { shares } from '../src/evidence/readingMasses.ts';
import { weighCase } from '../src/evidence/weighCase.ts';
import { yearAxis } from '../src/evidence/yearAxis.ts';
import { posterior } from '../src/inference/posterior.ts';
import type { Knowledge } from '../src/knowledge/schema.ts';
import { caseOf } from './weighCaseOf60.ts';

const smallFindings = 12;

export type Row = { what: string; medianMs: number; runs: number };

/** Times the steps of a weighing, in milliseconds, medians of the given number of runs after two that are not counted. */
export function weighTimes(
  knowledge: Knowledge,
  runs: number,
  now: () => number,
): { rows: Row[]; furthestApart: number; findings: number } {
  const yearNow = 2026;
  const input = caseOf(knowledge, 60, 7);
  const ready = prepareCase(input, knowledge, yearNow);
  if (!ready.ok) throw new Error('the case of the benchmark was refused');
  const layout = layOut(ready.prepared);
  const rows: Row[] = [];
  const time = (what: string, count: number, act: () => void) => {
    act();
    if (count > 1) act();
    const times: number[] = [];
    for (let i = 0; i < count; i++) {
      const from = now();
      act();
      times.push(now() - from);
    }
    times.sort((a, b) => a - b);
    rows.push({ what, medianMs: times[Math.floor(count / 2)] ?? 0, runs: count });
  };
  time('readings, years and shops', runs, () => void evaluate(fixModel(layout, bestDraw())));
  time(
    'and every part, weight and contradiction',
    runs,
    () => void weighCase({ ...input, quick: true }, knowledge, { yearNow }),
  );
  time('all next looks', Math.ceil(runs / 3), () => void nextLooks(ready.prepared, new Set()));
  time(
    'everything, no redraws',
    Math.ceil(runs / 5),
    () => void weighCase({ ...input, draws: 0 }, knowledge, { yearNow }),
  );
  time('everything, 500 redraws', 1, () => void weighCase({ ...input, draws: 500 }, knowledge, { yearNow }));

  // The peer: general elimination over the same model written out, on a case and an axis it can still carry.
  const small = { ...caseOf(knowledge, smallFindings, 7), shops: [] };
  const coarse = prepareCase(small, knowledge, yearNow, yearAxis(1700, yearNow, 55));
  if (!coarse.ok) throw new Error('the coarse case was refused');
  const coarseLayout = layOut(coarse.prepared, true);
  const network = explicitNetwork(fixModel(coarseLayout, bestDraw()));
  let ours: Record<string, number> = {};
  let general: Record<string, number> = {};
  time(
    `${smallFindings} findings, six year bins, no shops: readings by this summation`,
    Math.ceil(runs / 3),
    () => {
      ours = shares(evaluate(fixModel(coarseLayout, bestDraw())).masses);
    },
  );
  time(`${smallFindings} findings, six year bins, no shops: readings by general elimination`, 1, () => {
    const result = posterior(network, { hard: network.evidence }, ['reading']);
    if (!result.ok || !result.possible)
      throw new Error(`general elimination gave no answer: ${JSON.stringify(result).slice(0, 200)}`);
    general = result.posteriors.reading ?? {};
  });
  const furthestApart = Math.max(
    ...Object.keys(ours).map((id) => Math.abs((ours[id] ?? 0) - (general[id] ?? 0))),
  );
  return { rows, furthestApart, findings: input.findings.length };
}
