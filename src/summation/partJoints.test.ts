import { describe, expect, it } from 'vitest';
import { betaDraw } from '../evidence/betaDraws.ts';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import type { Look } from '../evidence/preparedCase.ts';
import { chestKnowledge } from '../evidence/testing/chestKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { seededRandom } from '../ground/seededRandom.ts';
import { askedOf } from '../knowledge/askedOf.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { findingKey } from '../piece/finding.ts';
import { evaluate, posteriorFor } from './evaluate.ts';
import { layOut } from './makeLayout.ts';
import { fixModel, type Model } from './model.ts';
import { partJoints, posteriorWithLook } from './partJoints.ts';
import { shares } from './readingPosterior.ts';

function model(knowledge: Knowledge, form: string, findings: CaseToWeigh['findings']): Model {
  const ready = prepareCase({ form, mode: 'in-hand', findings }, knowledge, 2026);
  if (!ready.ok) throw new Error('the case was refused');
  return fixModel(layOut(ready.prepared, true), betaDraw(seededRandom(11)));
}

// The joints of a part against the whole sum made anew with the look among the findings.
describe('a further look by the joints of a part', () => {
  it.each([
    {
      knowledge: chestKnowledge(),
      form: 'chest',
      findings: [
        { sign: 'centred', part: 'drawer-1', state: 'present' },
        { sign: 'centred', part: 'drawer-2', state: 'absent' },
        { sign: 'odd-joint', part: 'side', state: 'present' },
        { sign: 'saw-arcs', part: 'drawer-1', state: 'present' },
        { sign: 'late-screw', part: 'drawer-2', state: 'present', sure: 'fairly' },
        { sign: 'darkened', part: 'runner', state: 'absent' },
        { sign: 'new-glue', part: 'side', state: 'present' },
        { sign: 'sander-swirl', part: 'drawer-1', state: 'absent' },
      ] as CaseToWeigh['findings'],
    },
    { knowledge: smallKnowledge(), form: 'bench', findings: [] as CaseToWeigh['findings'] },
  ])('comes to what summing anew does, for every open sign of a $form', ({ knowledge, form, findings }) => {
    const before = model(knowledge, form, findings);
    const evaluation = evaluate(before);
    const { prepared } = before.layout;
    const made = { quick: 0, anew: 0 };
    const causes = new Set<string>();
    for (const part of prepared.parts) {
      const joints = partJoints(evaluation, part);
      for (const sign of Object.values(knowledge.signs)) {
        const key = findingKey(sign.id, part.id === 'whole' ? undefined : part.id);
        if (!askedOf(sign, part.kind, prepared.form) || prepared.looks.some((each) => each.key === key))
          continue;
        const look: Look = { key, sign, part: part.id, state: 'present', sure: 'plain' };
        const short = posteriorWithLook(joints, look);
        if (short === undefined) {
          made.anew++;
          continue;
        }
        made.quick++;
        causes.add(sign.hangsOn);
        // A further look by itself; how far it tells what others told is counted where it is proposed.
        const withIt = layOut({ ...prepared, looks: [...prepared.looks, look] }, true);
        const whole = posteriorFor(fixModel(withIt, before.draw));
        const [a, b] = [shares(short), shares(whole)];
        for (const id of Object.keys(a) as (keyof typeof a)[]) expect(a[id]).toBeCloseTo(b[id], 10);
        expect(Math.log(short.total) + short.log).toBeCloseTo(Math.log(whole.total) + whole.log, 8);
      }
    }
    // Most are told by the joints, of every kind of cause.
    expect(made.quick).toBeGreaterThan(made.anew);
    expect(causes.size).toBeGreaterThanOrEqual(4);
  });
});
