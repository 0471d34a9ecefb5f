import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { evaluate } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { leadingOf } from '../summation/readingPosterior.ts';
import { reasonGroups } from './reasonGroups.ts';
import { weighLooks } from './weights.ts';

function modelOf(knowledge: Knowledge, input: CaseToWeigh) {
  const ready = prepareCase(input, knowledge, 2019);
  if (!ready.ok) throw new Error(ready.faults.map((each) => each.message).join(' '));
  return layOut(ready.prepared);
}

describe('findings of one cause', () => {
  const knowledge = smallKnowledge();
  const groupsOf = (
    findings: CaseToWeigh['findings'],
    more: Partial<CaseToWeigh> = {},
    known: Knowledge = knowledge,
  ) => {
    const layout = modelOf(known, { form: 'bench', mode: 'in-hand', findings, ...more });
    const evaluation = evaluate(fixModel(layout, bestDraw()));
    const leading = leadingOf(evaluation.posterior);
    return reasonGroups(evaluation, weighLooks(evaluation, leading), leading).map((group) => ({
      ...group.cause,
      signs: group.looks.map((look) => `${look.sign.id}@${look.part}`),
    }));
  };
  const seen = (sign: string, part?: string) => ({
    sign,
    state: 'present' as const,
    ...(part === undefined ? {} : { part }),
  });

  it('are those of one event, whatever part they are on, with what was seen on the parts it brought', () => {
    const cuffs = [seen('cuff', 'leg-left'), seen('cuff', 'leg-right')];
    // Legs put in new and machine-sawn, in a piece whose rail is of hand work: the legs go with their replacement.
    const legs = ['leg-left', 'leg-right'].flatMap((part) => [
      seen('saw-arcs', part),
      { ...seen('worn', part), state: 'absent' as const },
    ]);
    const rail = [seen('plane-tracks', 'rail'), seen('darkened', 'rail')];
    const [event, ...rest] = groupsOf([...cuffs, ...legs, ...rail]);
    expect(event).toMatchObject({
      kind: 'alteration',
      id: 'legs-replaced',
      name: 'Alteration legs-replaced',
    });
    expect(event?.signs.toSorted()).toEqual(
      [...cuffs, ...legs].map((each) => `${each.sign}@${each.part}`).toSorted(),
    );
    // One finding of hand tools and one of aging are left: a cause of one is no group.
    expect(rest).toEqual([]);
  });

  it('are the habits of the shop that most probably made it; else the maker’s ways', () => {
    const findings = [
      seen('odd-joint', 'rail'),
      seen('odd-joint-twin', 'rail'),
      { ...seen('centred', 'leg-left'), state: 'absent' as const },
      { ...seen('centred', 'leg-right'), state: 'absent' as const },
      ...['rail', 'leg-left', 'leg-right'].flatMap((part) => [
        seen('darkened', part),
        seen('plane-tracks', part),
      ]),
    ];
    const claim = { place: 'Northam', period: [1745, 1785] as [number, number] };
    const { north } = knowledge.shops;
    if (north === undefined) throw new Error('no such shop');
    const habits = [...north.habits, { sign: 'odd-joint-twin', shows: { in100: '90, 80–95' } }];
    const bothHeld = { ...knowledge, shops: { north: { ...north, habits } } };
    const byKind = (groups: ReturnType<typeof groupsOf>) =>
      Object.fromEntries(groups.map(({ kind, id, signs }) => [`${kind} ${id}`, signs.length]));
    expect(byKind(groupsOf(findings, { claim }, bothHeld))).toEqual({
      'shop north': 2,
      'making making': 2,
      'ageing ageing': 3,
      'tooling tooling': 3,
    });
    expect(byKind(groupsOf(findings, { claim, shops: [] }))).toEqual({
      'making making': 4,
      'ageing ageing': 3,
      'tooling tooling': 3,
    });
  });
});
