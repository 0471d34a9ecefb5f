import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { chestKnowledge } from '../evidence/testing/chestKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { yearAxis } from '../evidence/yearAxis.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { expectedWords, type Observation, pieceHistories } from '../piece/observation.ts';
import { evaluate } from '../summation/evaluate.ts';
import { Kept } from '../summation/kept.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { firstAnswer } from './firstAnswer.ts';
import { weighCase } from './weighCase.ts';

type Touch = (before: CaseToWeigh) => CaseToWeigh;

/** What is found at a place takes the place of what was found there, or goes. */
function anyFinding(knowledge: Knowledge, form: string): fc.Arbitrary<Touch> {
  const parts = knowledge.forms[form]?.parts ?? [];
  const places = Object.values(knowledge.signs).flatMap(({ id, on, hangsOn }) => [
    ...(on.includes('whole') ? [{ sign: id, part: undefined, hangsOn }] : []),
    ...parts.filter(({ kind }) => on.includes(kind)).map((part) => ({ sign: id, part: part.id, hangsOn })),
  ]);
  const measured = (hangsOn: string): Record<string, number> =>
    hangsOn === 'making'
      ? { period: 2, 'bench-copy': 1, 'machine-copy': 3, 'to-deceive': 0.5 }
      : { present: 3, absent: 1 };
  return fc
    .record({
      place: fc.constantFrom(...places),
      state: fc.constantFrom('present' as const, 'absent' as const, 'could-not-tell' as const),
      sure: fc.constantFrom('plain' as const, 'fairly' as const, 'hint' as const),
      how: fc.constantFrom('seen', 'seen', 'seen', 'seen', 'measured', 'gone', 'less sure'),
    })
    .map(
      ({ place: { hangsOn, ...place }, how, ...rest }): Touch =>
        (before) => {
          const last = before.findings.at(-1);
          if (how === 'less sure' && last !== undefined)
            return { ...before, findings: [...before.findings.slice(0, -1), { ...last, sure: rest.sure }] };
          const others = before.findings.filter(
            (each) => each.sign !== place.sign || each.part !== place.part,
          );
          const made = {
            ...place,
            ...rest,
            ...(how === 'measured' ? { likelihoods: measured(hangsOn) } : {}),
          };
          return { ...before, findings: how === 'gone' ? others : [...others, made] };
        },
    );
}

/** Something else is said of the piece. */
function anyOther(knowledge: Knowledge, form: string): fc.Arbitrary<Touch> {
  const missing = { id: knowledge.forms[form]?.parts[1]?.id ?? '', missing: true };
  const expected = Object.fromEntries(pieceHistories.map((each, at) => [each, expectedWords[at % 3]]));
  const seen = { id: 'a', words: 'a trace', expected: expected as Observation['expected'] };
  return fc
    .record({
      claim: fc.constantFrom({}, { period: [1740, 1790] as [number, number] }, { place: 'North Riding' }),
      startingOdds: fc.constantFrom('even', 'sceptical'),
      lookedOver: fc.boolean(),
      parts: fc.subarray([missing]),
      observations: fc.subarray([seen]),
    })
    .map(
      (said): Touch =>
        (before) => ({ ...before, ...said }),
    );
}

/** The same names with other figures behind them. */
function withOtherFigures(knowledge: Knowledge): Knowledge {
  const signs = Object.entries(knowledge.signs).map(([id, sign]) => {
    const figures = Object.values(sign.shows).reverse();
    return [
      id,
      { ...sign, shows: Object.fromEntries(Object.keys(sign.shows).map((s, at) => [s, figures[at]])) },
    ];
  });
  return { ...knowledge, signs: Object.fromEntries(signs) };
}

function firstOf(input: CaseToWeigh, knowledge: Knowledge, kept: Kept) {
  const ready = prepareCase(input, knowledge, 2019, yearAxis(1700, 2019, 80));
  if (!ready.ok) throw new Error('refused');
  const layout = layOut(ready.prepared, false, kept);
  const evaluation = evaluate(fixModel(layout, kept.draw, undefined, undefined, kept.sums));
  return JSON.stringify([evaluation.posterior, firstAnswer(evaluation, input)]);
}

// What is kept may spare work; it may not change a digit.
describe('a case weighed upon the one before it comes out as from the start', () => {
  it.each([
    { knowledge: smallKnowledge(), form: 'bench' },
    { knowledge: chestKnowledge(), form: 'chest' },
  ])('touch by touch, on a $form', ({ knowledge, form }) => {
    const learned = withOtherFigures(knowledge);
    const touch = fc.oneof(
      { weight: 8, arbitrary: anyFinding(knowledge, form) },
      { weight: 1, arbitrary: anyOther(knowledge, form) },
    );
    const sitting = fc.array(touch, { minLength: 30, maxLength: 50 });
    fc.assert(
      fc.property(sitting, fc.integer({ min: 0, max: 60 }), (touches, learnedAt) => {
        const kept = new Kept();
        let input: CaseToWeigh = { form, mode: 'in-hand', findings: [], quick: true, draws: 0 };
        touches.forEach((next, at) => {
          input = next(input);
          const known = at === learnedAt ? learned : knowledge;
          expect(firstOf(input, known, kept)).toBe(firstOf(input, known, new Kept()));
        });
        const whole = (upon: Kept) => weighCase(input, knowledge, { yearNow: 2019, kept: upon });
        expect(whole(kept)).toEqual(whole(new Kept()));
      }),
      { numRuns: 3, seed: 9 },
    );
  });
});
