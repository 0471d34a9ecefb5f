import { describe, expect, it } from 'vitest';
import { betaDraw } from '../evidence/betaDraws.ts';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import type { Look } from '../evidence/preparedCase.ts';
import { chestKnowledge } from '../evidence/testing/chestKnowledge.ts';
import { seededRandom } from '../ground/seededRandom.ts';
import { evaluate, posteriorFor } from './evaluate.ts';
import { layOut } from './makeLayout.ts';
import { fixModel } from './model.ts';
import { posteriorAfter } from './posteriorAfter.ts';
import { type Posterior, shares } from './readingPosterior.ts';

const knowledge = chestKnowledge();
const findings: CaseToWeigh['findings'] = [
  { sign: 'centred', part: 'drawer-1', state: 'present' },
  { sign: 'centred', part: 'drawer-2', state: 'absent' },
  { sign: 'centred', part: 'top', state: 'absent', sure: 'fairly' },
  { sign: 'odd-joint', part: 'side', state: 'present' },
  { sign: 'odd-joint-twin', part: 'side', state: 'present' },
  { sign: 'saw-arcs', part: 'drawer-1', state: 'present' },
  { sign: 'late-screw', part: 'drawer-2', state: 'present' },
  { sign: 'darkened', part: 'runner', state: 'absent' },
  { sign: 'late-line', state: 'present' },
];

function laidOut(given: CaseToWeigh['findings'], fine: boolean) {
  const ready = prepareCase({ form: 'chest', mode: 'in-hand', findings: given }, knowledge, 2026);
  if (!ready.ok) throw new Error('the case was refused');
  return fixModel(layOut(ready.prepared, fine), betaDraw(seededRandom(4)));
}

function expectSame(short: Posterior, anew: Posterior): void {
  const [a, b] = [shares(short), shares(anew)];
  for (const id of Object.keys(a) as (keyof typeof a)[]) expect(a[id]).toBeCloseTo(b[id], 10);
  expect(Math.log(short.total) + short.log).toBeCloseTo(Math.log(anew.total) + anew.log, 8);
}

// The short way through the messages against the whole sum made anew.
describe('a change of one look', () => {
  it('taken out or reversed, comes to what summing anew does', () => {
    const model = laidOut(findings, false);
    const evaluation = evaluate(model);
    for (const look of evaluation.looks) {
      const others = evaluation.looks.filter((each) => each !== look);
      expectSame(posteriorAfter(evaluation, look, others), posteriorFor(model, others));
      const reversed = evaluation.looks.map(
        (each): Look =>
          each === look ? { ...each, state: each.state === 'present' ? 'absent' : 'present' } : each,
      );
      expectSame(posteriorAfter(evaluation, look, reversed), posteriorFor(model, reversed));
    }
  });

  it('added to what was seen so far, comes to what a case with it does', () => {
    const fewer = findings.filter((each) => !each.sign.startsWith('odd-joint'));
    for (const more of [
      { sign: 'plane-tracks', part: 'top', state: 'present' },
      { sign: 'odd-joint', part: 'top', state: 'present' },
      { sign: 'worn', part: 'runner', state: 'absent' },
    ] as const) {
      const withIt = laidOut([...fewer, more], true);
      const look = withIt.layout.prepared.looks.at(-1) as Look;
      const evaluation = evaluate(fixModel(laidOut(fewer, true).layout, withIt.draw));
      expectSame(posteriorAfter(evaluation, look, [...evaluation.looks, look]), posteriorFor(withIt));
    }
  });
});
