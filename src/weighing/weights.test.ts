import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaDraw } from '../evidence/betaDraws.ts';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import type { Look } from '../evidence/preparedCase.ts';
import { chestKnowledge } from '../evidence/testing/chestKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { yearAxis } from '../evidence/yearAxis.ts';
import { seededRandom } from '../ground/seededRandom.ts';
import { finished } from '../ground/steps.ts';
import { posterior } from '../inference/posterior.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import { evaluate, posteriorFor } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { leadingOf } from '../summation/readingPosterior.ts';
import { explicitNetwork } from '../summation/testing/explicitNetwork.ts';
import { reasonGroups } from './reasonGroups.ts';
import { weighLooks } from './weights.ts';

function anyCase(knowledge: Knowledge, form: string, most: number): fc.Arbitrary<CaseToWeigh> {
  const places = Object.values(knowledge.signs).flatMap((sign) => [
    ...(sign.on.includes('whole') ? [{ sign: sign.id }] : []),
    ...(knowledge.forms[form]?.parts ?? [])
      .filter((part) => sign.on.includes(part.kind))
      .map((part) => ({ sign: sign.id, part: part.id })),
  ]);
  const share = fc.double({ min: 0.05, max: 1, noNaN: true });
  const finding = fc
    .record({
      place: fc.constantFrom(...places),
      state: fc.constantFrom('present' as const, 'absent' as const),
      sure: fc.constantFrom('plain' as const, 'fairly' as const, 'hint' as const),
      measured: fc.option(fc.record({ present: share, absent: share }), { nil: undefined }),
    })
    .map(({ place, measured, ...rest }) => ({
      ...place,
      ...rest,
      ...(measured === undefined ? {} : { likelihoods: measured }),
    }));
  return fc.record({
    form: fc.constant(form),
    mode: fc.constant('in-hand' as const),
    claim: fc.constantFrom({}, { place: 'Northam' }),
    findings: fc.array(finding, { minLength: 1, maxLength: most }),
  });
}

/** The log odds of some readings against others in decibans, from a weighing of these findings alone, made anew. */
type LogOdds = (looks: readonly Look[], one: readonly ReadingId[], other: readonly ReadingId[]) => number;

const decibans = (one: number, other: number) => 10 * Math.log10(one / other);

function modelOf(knowledge: Knowledge, input: CaseToWeigh, axis?: ReturnType<typeof yearAxis>) {
  const ready = prepareCase(input, knowledge, 2019, axis);
  if (!ready.ok) throw new Error(ready.faults.map((each) => each.message).join(' '));
  return layOut(ready.prepared, axis !== undefined);
}

/** Holds every weight of an evaluation, and of its groups, against log odds made another way. */
function expectWeights(evaluation: ReturnType<typeof evaluate>, logOdds: LogOdds, digits: number): void {
  const leading = leadingOf(evaluation.posterior);
  const others = readingIds.filter((id) => id !== leading);
  const [rival] = others.toSorted(
    (a, b) => evaluation.posterior.readings[b] - evaluation.posterior.readings[a],
  );
  const period: ReadingId[] = ['period-intact', 'period-repaired', 'period-altered'];
  const later: ReadingId[] = ['later-bench-copy', 'later-machine-copy', 'made-to-deceive'];
  const { looks } = evaluation;
  const moved = (out: readonly Look[], one: readonly ReadingId[], other: readonly ReadingId[]) =>
    logOdds(looks, one, other) -
    logOdds(
      looks.filter((look) => !out.includes(look)),
      one,
      other,
    );
  const weights = finished(weighLooks(evaluation, leading));
  for (const { look, alone, withinWhole, againstRival, periodAgainstLater } of weights) {
    expect(withinWhole).toBeCloseTo(moved([look], [leading], others), digits);
    expect(againstRival).toBeCloseTo(moved([look], [leading], [rival as ReadingId]), digits);
    expect(alone).toBeCloseTo(logOdds([look], [leading], others) - logOdds([], [leading], others), digits);
    expect(periodAgainstLater.withinWhole).toBeCloseTo(moved([look], period, later), digits);
    expect(periodAgainstLater.alone).toBeCloseTo(
      logOdds([look], period, later) - logOdds([], period, later),
      digits,
    );
  }
  const groups = finished(reasonGroups(evaluation, weights, leading));
  const grouped = groups.flatMap((group) => group.looks);
  expect(new Set(grouped).size).toBe(grouped.length);
  for (const group of groups) {
    expect(group.looks.length).toBeGreaterThan(1);
    expect(group.withinWhole).toBeCloseTo(moved(group.looks, [leading], others), digits);
    expect(group.againstRival).toBeCloseTo(moved(group.looks, [leading], [rival as ReadingId]), digits);
  }
  const sizes = groups.map((group) => Math.abs(group.withinWhole ?? Number.POSITIVE_INFINITY));
  expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
}

describe('every weight is the whole held against the whole without', () => {
  it.each([
    { knowledge: smallKnowledge(), form: 'bench', most: 10, numRuns: 12 },
    { knowledge: chestKnowledge(), form: 'chest', most: 7, numRuns: 4 },
  ])(
    'for a $form: two weighings made anew, with the findings and without',
    ({ knowledge, form, most, numRuns }) => {
      fc.assert(
        fc.property(anyCase(knowledge, form, most), (input) => {
          const layout = modelOf(knowledge, input);
          const logOdds: LogOdds = (looks, one, other) => {
            const { readings } = posteriorFor(fixModel(layout, bestDraw(), looks), looks);
            const sum = (ids: readonly ReadingId[]) => ids.reduce((total, id) => total + readings[id], 0);
            return decibans(sum(one), sum(other));
          };
          expectWeights(evaluate(fixModel(layout, bestDraw())), logOdds, 9);
        }),
        { numRuns, seed: 11 },
      );
    },
  );

  it('and by general elimination over the model with every unknown written out', () => {
    const knowledge = smallKnowledge();
    fc.assert(
      fc.property(anyCase(knowledge, 'bench', 4), fc.integer({ min: 1, max: 1e6 }), (input, seed) => {
        const axis = yearAxis(1700, 2019, 80);
        const layout = modelOf(knowledge, input, axis);
        const draw = betaDraw(seededRandom(seed));
        const evaluation = evaluate(fixModel(layout, draw));
        const logOdds: LogOdds = (looks, one, other) => {
          // The case itself is laid out anew with these findings and no others.
          const fewer = layOut({ ...layout.prepared, looks: [...looks] }, true);
          const network = explicitNetwork(fixModel(fewer, draw));
          const result = posterior(network, { hard: network.evidence });
          if (!result.ok || !result.possible) throw new Error('the explicit network was refused');
          const sum = (ids: readonly ReadingId[]) =>
            ids.reduce((total, id) => total + (result.posteriors.reading?.[id] ?? 0), 0);
          return decibans(sum(one), sum(other));
        };
        expectWeights(evaluation, logOdds, 6);
      }),
      { numRuns: 4, seed: 5 },
    );
  }, 60_000);
});
