import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { posterior } from '../inference/posterior.ts';
import { betaDraw, seededRandom } from './betaDraws.ts';
import { evaluate } from './evaluation.ts';
import { explicitNetwork } from './explicitNetwork.ts';
import { layOut } from './layout.ts';
import { fixModel } from './model.ts';
import { massByBin, partPosterior } from './partPosterior.ts';
import { prepareCase } from './prepareCase.ts';
import { shares } from './readingMasses.ts';
import { periodMass, shopMasses, shopProbabilities } from './shopMasses.ts';
import { smallKnowledge } from './testing/smallKnowledge.ts';
import type { CaseToWeigh } from './weighing.ts';
import { yearAxis } from './yearAxis.ts';

const knowledge = smallKnowledge();
const axis = yearAxis(1700, 2019, 80);

const anyFinding = fc.constantFrom(...Object.values(knowledge.signs)).chain((sign) =>
  fc.record({
    sign: fc.constant(sign.id),
    part: fc.constantFrom(
      ...sign.on.flatMap((kind) =>
        kind === 'whole' ? [undefined] : kind === 'leg' ? ['leg-left', 'leg-right'] : [kind],
      ),
    ),
    state: fc.constantFrom('present' as const, 'absent' as const),
    sure: fc.constantFrom('plain' as const, 'fairly' as const, 'hint' as const),
  }),
);

const anyCase: fc.Arbitrary<CaseToWeigh> = fc.record({
  form: fc.constant('bench'),
  mode: fc.constant('in-hand' as const),
  claim: fc.constantFrom({}, { period: [1740, 1790] as [number, number] }, { place: 'North Riding' }),
  startingOdds: fc.constantFrom('even', 'sceptical'),
  findings: fc
    .array(anyFinding, { maxLength: 12 })
    .map((all) => all.map(({ part, ...rest }) => (part === undefined ? rest : { ...rest, part }))),
});

function prepared(input: CaseToWeigh) {
  const ready = prepareCase(input, knowledge, 2019, axis);
  if (!ready.ok) throw new Error(ready.faults.map((each) => each.message).join(' '));
  return ready.prepared;
}

// The program's summation against general elimination over the same model with every unknown written out.
describe('the summation of a case agrees with the explicit network', () => {
  it('in readings, years, shops, alterations, part origins, part years and the evidence', () => {
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 1, max: 1e6 }), (input, seed) => {
        const layout = layOut(prepared(input), true);
        const evaluation = evaluate(fixModel(layout, betaDraw(seededRandom(seed))));
        const network = explicitNetwork(evaluation.model);
        const result = posterior(network, { hard: network.evidence });
        if (!result.ok || !result.possible)
          throw new Error(`the explicit network was refused: ${JSON.stringify(result).slice(0, 300)}`);
        const other = result.posteriors;

        const readings = shares(evaluation.masses);
        for (const [id, share] of Object.entries(readings))
          expect(share).toBeCloseTo(other.reading?.[id] ?? Number.NaN, 9);
        expect(Math.log(evaluation.masses.total) + evaluation.masses.log).toBeCloseTo(result.logEvidence, 7);

        const years = massByBin(evaluation.model, evaluation.whole);
        years.forEach((mass, bin) => {
          expect(mass / evaluation.masses.total).toBeCloseTo(other.year?.[`b${bin}`] ?? Number.NaN, 9);
        });
        const shops = shopMasses(layout, evaluation.whole);
        layout.prepared.shops.forEach((shop, index) => {
          expect(periodMass(shops[index + 1]) / evaluation.masses.total).toBeCloseTo(
            other.shop?.[shop.id] ?? Number.NaN,
            9,
          );
        });
        const fewer = evaluate(fixModel(layOut(layout.prepared), evaluation.model.draw));
        for (const [id, share] of Object.entries(shares(fewer.masses)))
          expect(share).toBeCloseTo(other.reading?.[id] ?? Number.NaN, 9);
        shopProbabilities(fewer.model, fewer.whole, fewer.masses.total).forEach((share, index) => {
          expect(share).toBeCloseTo(other.shop?.[layout.prepared.shops[index]?.id ?? ''] ?? Number.NaN, 9);
        });
        for (const part of layout.prepared.parts.filter((each) => each.renewed !== undefined)) {
          const { origin, years: partYears } = partPosterior(evaluation, part);
          const source = other[`source of ${part.id}`] ?? {};
          expect(origin['of-the-making']).toBeCloseTo(source.own ?? Number.NaN, 9);
          expect(origin['other-old']).toBeCloseTo((source.reused ?? 0) + (source['made-up'] ?? 0), 9);
          expect(origin.improve).toBeCloseTo(source['rail-improved'] ?? 0, 9);
          partYears.density.forEach(([, share], bin) => {
            expect(Math.abs(share - (other[`year of ${part.id}`]?.[`b${bin}`] ?? Number.NaN))).toBeLessThan(
              3e-4,
            );
          });
        }
      }),
      { seed: 20261125, numRuns: 60 },
    );
  }, 120_000);
});
