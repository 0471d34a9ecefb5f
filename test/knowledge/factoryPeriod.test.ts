import { beforeAll, expect, it } from 'vitest';
import { bestDraw } from '../../src/evidence/figures.ts';
import { prepareCase } from '../../src/evidence/prepareCase.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { posteriorFor } from '../../src/summation/evaluate.ts';
import { layOut } from '../../src/summation/makeLayout.ts';
import { fixModel } from '../../src/summation/model.ts';
import { shares } from '../../src/summation/readingPosterior.ts';
import { makingShares } from '../../src/weighing/makingFirst.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

type Seen = readonly [sign: string, part: string];

/** Decibans by which signs move a piece of its claimed years against every later one. */
function moved(form: string, period: [number, number] | undefined, seen: readonly Seen[], known = knowledge) {
  const decibans = (these: readonly Seen[]) => {
    const findings = these.map(([sign, part]) => ({ sign, part, state: 'present' as const }));
    const claim = period === undefined ? {} : { claim: { period } };
    const ready = prepareCase({ form, mode: 'in-hand', findings, ...claim }, known, 2026);
    if (!ready.ok) throw new Error(`${form} can't be weighed`);
    expect(ready.prepared.ignored).toEqual([]);
    const made = makingShares(shares(posteriorFor(fixModel(layOut(ready.prepared), bestDraw()))));
    return 10 * Math.log10(made['of-the-period'] / (made['later-copy'] + made['to-deceive']));
  };
  return decibans(seen) - decibans([]);
}

const ofTheFactory: readonly Seen[] = [
  ['joint-dowelled', 'front-rail'],
  ['joint-dowelled', 'crest-rail'],
  ['number-stencilled-or-impressed', 'back-rail'],
];

// Common practice: dowels and pattern numbers are the ordinary make of a factory chair, of the revivals of about 1840 to 1890 and of the
// Colonial Revival alike. They tell little against the years in which such factories worked (copies show them somewhat oftener), and much against any earlier.
it.each([
  ['a balloon-back chair of its own years', 'balloon-back-chair', undefined],
  ['a side chair claimed for the Colonial Revival', 'side-chair', [1895, 1915]],
  ['an armchair claimed for the Colonial Revival', 'armchair', [1910, 1930]],
] as const)('the make of a factory hardly speaks against %s', (_, form, period) => {
  expect(moved(form, period && [...period], ofTheFactory)).toBeGreaterThan(-5);
});

it.each(['side-chair', 'armchair'])('it speaks against a %s claimed for 1760 to 1780', (form) => {
  expect(moved(form, [1760, 1780], ofTheFactory)).toBeLessThan(-20);
});

it('a maker’s paper does not speak against a Connecticut shelf clock', () => {
  expect(moved('shelf-clock', undefined, [['label-of-period-maker', 'whole']])).toBeGreaterThan(0);
});

it('would speak against it if no file held the factories’ habits', () => {
  const without = Object.fromEntries(
    Object.entries(knowledge.shops).filter(([id]) => !/factories|british-victorian/.test(id)),
  );
  expect(moved('balloon-back-chair', undefined, ofTheFactory, { ...knowledge, shops: without })).toBeLessThan(
    -10,
  );
});
