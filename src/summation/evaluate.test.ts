import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaDraw } from '../evidence/betaDraws.ts';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { chestKnowledge } from '../evidence/testing/chestKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { type YearAxis, yearAxis } from '../evidence/yearAxis.ts';
import { seededRandom } from '../ground/seededRandom.ts';
import { posterior } from '../inference/posterior.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { expectedWords, type Observation, pieceHistories } from '../piece/observation.ts';
import { massByBin, partPosterior } from '../weighing/partPosterior.ts';
import { evaluate } from './evaluate.ts';
import { layOut } from './makeLayout.ts';
import { fixModel } from './model.ts';
import { posteriorIf } from './posteriorAfter.ts';
import { shares } from './readingPosterior.ts';
import { periodMass, shopPosterior, shopProbabilities } from './shopPosterior.ts';
import { explicitNetwork } from './testing/explicitNetwork.ts';

/** Any finding of a form: every sign on every part that can bear it. */
function anyFinding(knowledge: Knowledge, form: string) {
  const places = Object.values(knowledge.signs).flatMap((sign) => [
    ...(sign.on.includes('whole') ? [{ sign: sign.id }] : []),
    ...(knowledge.forms[form]?.parts ?? [])
      .filter((part) => sign.on.includes(part.kind))
      .map((part) => ({ sign: sign.id, part: part.id })),
  ]);
  return fc
    .record({
      place: fc.constantFrom(...places),
      state: fc.constantFrom('present' as const, 'absent' as const),
      sure: fc.constantFrom('plain' as const, 'fairly' as const, 'hint' as const),
    })
    .map(({ place, ...rest }) => ({ ...place, ...rest }));
}

const anyObservation = fc
  .record(Object.fromEntries(pieceHistories.map((each) => [each, fc.constantFrom(...expectedWords)])))
  .map((expected) => ({ id: 'a', words: 'a trace', expected: expected as Observation['expected'] }));

const anyCase = (knowledge: Knowledge, form: string, most: number): fc.Arbitrary<CaseToWeigh> =>
  fc.record({
    form: fc.constant(form),
    mode: fc.constant('in-hand' as const),
    claim: fc.constantFrom({}, { period: [1740, 1790] as [number, number] }, { place: 'North Riding' }),
    startingOdds: fc.constantFrom('even', 'sceptical'),
    findings: fc.array(anyFinding(knowledge, form), { maxLength: most }),
    observations: fc.array(anyObservation, { maxLength: 2 }),
    lookedOver: fc.boolean(),
  });

function prepared(knowledge: Knowledge, input: CaseToWeigh, axis: YearAxis) {
  const ready = prepareCase(input, knowledge, 2019, axis);
  if (!ready.ok) throw new Error(ready.faults.map((each) => each.message).join(' '));
  return ready.prepared;
}

// The program's summation against general elimination over the same model with every unknown written out.
describe('the summation of a case agrees with the explicit network', () => {
  it.each([
    { knowledge: smallKnowledge(), form: 'bench', most: 12, axis: yearAxis(1700, 2019, 80), numRuns: 40 },
    // Several make-ups, parts that several alterations touch, and a structural part renewed in upkeep.
    { knowledge: chestKnowledge(), form: 'chest', most: 8, axis: yearAxis(1700, 2019, 110), numRuns: 12 },
  ])(
    'for a $form, in readings, years, shops, alterations, parts and the evidence',
    ({ knowledge, form, most, axis, numRuns }) => {
      fc.assert(
        fc.property(anyCase(knowledge, form, most), fc.integer({ min: 1, max: 1e6 }), (input, seed) => {
          const layout = layOut(prepared(knowledge, input, axis), true);
          const evaluation = evaluate(fixModel(layout, betaDraw(seededRandom(seed))));
          const network = explicitNetwork(evaluation.model);
          const result = posterior(network, { hard: network.evidence });
          if (!result.ok || !result.possible)
            throw new Error(`the explicit network was refused: ${JSON.stringify(result).slice(0, 300)}`);
          const other = result.posteriors;

          const readings = shares(evaluation.posterior);
          for (const [id, share] of Object.entries(readings))
            expect(share).toBeCloseTo(other.reading?.[id] ?? Number.NaN, 9);
          expect(Math.log(evaluation.posterior.total) + evaluation.posterior.log).toBeCloseTo(
            result.logEvidence,
            7,
          );

          for (const alteration of layout.prepared.alterations) {
            const posterior = posteriorIf(evaluation, alteration, true, evaluation.looks);
            const share =
              (posterior.total / evaluation.posterior.total) *
              Math.exp(posterior.log - evaluation.posterior.log);
            expect(share).toBeCloseTo(other[`alteration ${alteration.id}`]?.happened ?? Number.NaN, 9);
          }
          const years = massByBin(evaluation.model, evaluation.whole);
          years.forEach((mass, bin) => {
            expect(mass / evaluation.posterior.total).toBeCloseTo(other.year?.[`b${bin}`] ?? Number.NaN, 9);
          });
          const shops = shopPosterior(layout, evaluation.whole);
          layout.prepared.shops.forEach((shop, index) => {
            expect(periodMass(shops[index + 1]) / evaluation.posterior.total).toBeCloseTo(
              other.shop?.[shop.id] ?? Number.NaN,
              9,
            );
          });
          const fewer = evaluate(fixModel(layOut(layout.prepared), evaluation.model.draw));
          for (const [id, share] of Object.entries(shares(fewer.posterior)))
            expect(share).toBeCloseTo(other.reading?.[id] ?? Number.NaN, 9);
          shopProbabilities(fewer.model, fewer.whole, fewer.posterior.total).forEach((share, index) => {
            expect(share).toBeCloseTo(other.shop?.[layout.prepared.shops[index]?.id ?? ''] ?? Number.NaN, 9);
          });
          for (const part of layout.prepared.parts.filter((each) => each.renewed !== undefined)) {
            const { origin, years: partYears } = partPosterior(evaluation, part);
            const source = other[`source of ${part.id}`] ?? {};
            expect(origin['of-the-making']).toBeCloseTo(source.own ?? Number.NaN, 9);
            const by = (to: string) =>
              layout.prepared.alterations.reduce(
                (sum, each) => sum + (each.changes[part.kind]?.to === to ? (source[each.id] ?? 0) : 0),
                0,
              );
            expect(origin['other-old']).toBeCloseTo((source.reused ?? 0) + by('other-old'), 9);
            expect(origin.improve).toBeCloseTo(by('improve'), 9);
            expect(origin.repair).toBeCloseTo((source.renewed ?? 0) + by('repair'), 9);
            partYears.density.forEach(([, share], bin) => {
              expect(Math.abs(share - (other[`year of ${part.id}`]?.[`b${bin}`] ?? Number.NaN))).toBeLessThan(
                3e-4,
              );
            });
          }
        }),
        { seed: 20261125, numRuns },
      );
    },
    120_000,
  );
});
