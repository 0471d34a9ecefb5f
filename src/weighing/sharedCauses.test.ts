import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import {
  alterationOf,
  handPieces,
  type Made,
  makingSign,
  shopOf,
  signOf,
} from '../evidence/testing/handPieces.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { finished } from '../ground/steps.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { evaluate } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { leadingOf } from '../summation/readingPosterior.ts';
import { reasonGroups } from './reasonGroups.ts';
import { sharedCauses } from './sharedCauses.ts';
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
    return finished(reasonGroups(evaluation, finished(weighLooks(evaluation, leading)), leading)).map(
      (group) => ({
        ...group.cause,
        signs: group.looks.map((look) => `${look.sign.id}@${look.part}`),
      }),
    );
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

// Worked by hand from the shares typed here.
describe('what several findings have in common', () => {
  const causes = (made: Made, ...findings: [sign: string, part?: string][]) => {
    const layout = modelOf(handPieces(made), {
      form: 'box',
      mode: 'in-hand',
      findings: findings.map(([sign, part]) => ({
        sign,
        state: 'present' as const,
        ...(part === undefined ? {} : { part }),
      })),
    });
    return sharedCauses(evaluate(fixModel(layout, bestDraw()))).map(({ cause, looks }) => ({
      ...cause,
      signs: looks.map((look) => `${look.sign.id}@${look.part}`),
    }));
  };
  const both = (id: string): [string, string][] => [
    [id, 'lid'],
    [id, 'board'],
  ];
  const inUse = { 'in-use': 50, 'out-of-use': 50 };
  const span = { span: { earliest: 1600, commonFrom: 1600 } as never };
  const worn = { natural: 50, none: 50, imitated: 50 };
  const ofOrigin = { 'of-the-making': 3, repair: 60, improve: 8, 'other-old': 1 };

  it.each([
    ['making', makingSign('s', 50, 50), 'The maker’s ways of building'],
    [
      'tooling',
      signOf('s', 'tooling', { hand: 50, 'early-machine': 50, 'modern-machine': 50 }),
      'The tools it was worked with',
    ],
    ['ageing', signOf('s', 'ageing', worn), 'How its surfaces aged'],
    ['use', signOf('s', 'use', worn), 'How it was worn in use'],
    ['origin', signOf('s', 'origin', ofOrigin), 'Where its parts come from'],
    ['dating', { ...signOf('s', 'year', inUse), ...span }, 'What dates it'],
    ['dating', { ...signOf('s', 'part-year', inUse), ...span }, 'What dates it'],
  ] as const)('is called %s', (kind, sign, name) => {
    // Nothing is renewed, so that no part has a story of its own.
    expect(causes({ signs: [sign] }, ...both('s'))).toEqual([
      { kind, id: kind, name, signs: ['s@lid', 's@board'] },
    ]);
    expect(causes({ signs: [sign] }, ['s', 'lid'])).toEqual([]);
  });

  it('is one for the years of the piece and of its parts', () => {
    const signs = [
      { ...signOf('y', 'year', inUse), ...span },
      { ...signOf('p', 'part-year', inUse), ...span },
    ];
    expect(causes({ signs }, ['y'], ['p', 'lid']).map(({ id, signs: of }) => [id, of])).toEqual([
      ['dating', ['y@whole', 'p@lid']],
    ]);
  });

  it('is the part, where it was most probably renewed or came from another old piece', () => {
    // 0.6·0.03 of lids of the making beside 0.4·0.6 of renewed ones.
    const holes = signOf('holes', 'origin', ofOrigin);
    const marks = makingSign('marks', 50, 50);
    expect(causes({ signs: [holes, marks], renewed: 40 }, ['holes', 'lid'], ['marks', 'lid'])).toEqual([
      {
        kind: 'part',
        id: 'lid',
        name: 'The lid: a later repair or renewal',
        signs: ['holes@lid', 'marks@lid'],
      },
    ]);
    // What was seen of the piece as a whole goes by itself; a lid of the making too.
    expect(causes({ signs: [holes, marks], renewed: 40 }, ['holes', 'lid'], ['marks'])).toEqual([]);
    expect(causes({ signs: [holes, marks], renewed: 1 }, ['holes', 'lid'], ['marks', 'lid'])).toEqual([]);
    const old = signOf('holes', 'origin', { ...ofOrigin, repair: 1, 'other-old': 60 });
    expect(
      causes({ signs: [old, marks], renewed: 40, reused: 50 }, ['holes', 'lid'], ['marks', 'lid'])[0]?.name,
    ).toBe('The lid: from another old piece');
  });

  it('is no part’s where nothing of it is more probable than not', () => {
    // 40 lids renewed, of the others 30 in 100 from an old piece: 0.42·0.1 of the making, 0.4·0.1, 0.18·0.2, about as much each.
    const even = signOf('holes', 'origin', { 'of-the-making': 10, repair: 10, improve: 10, 'other-old': 20 });
    const flat = signOf('marks', 'origin', { 'of-the-making': 50, repair: 50, improve: 50, 'other-old': 50 });
    const made = { signs: [even, flat], renewed: 40, reused: 30 };
    expect(causes(made, ['holes', 'lid'], ['marks', 'lid']).map(({ kind }) => kind)).toEqual(['origin']);
  });

  it('is the alteration of which they are traces, on whatever part', () => {
    const trace = signOf('trace', 'alteration/waxed', { happened: 60, not: 2 });
    const alterations = [alterationOf('oiled', 'upkeep', 10), alterationOf('waxed', 'upkeep', 10)];
    const made = { signs: [trace], alterations };
    expect(causes(made, ...both('trace'))).toEqual([
      { kind: 'alteration', id: 'waxed', name: 'Changed by waxed', signs: ['trace@lid', 'trace@board'] },
    ]);
  });

  it('is the shop that most probably made it, for its habits and nothing else', () => {
    const signs = [makingSign('joint', 2, 2), makingSign('twin', 2, 2), makingSign('usual', 50, 50)];
    const found: [string, string?][] = [['joint'], ['twin'], ['usual', 'lid'], ['usual', 'board']];
    const habits = { joint: 90, twin: 90 };
    expect(causes({ signs, shops: [shopOf('north', 50, habits)] }, ...found)).toEqual([
      {
        kind: 'shop',
        id: 'north',
        name: 'The habits of The north shop',
        signs: ['joint@whole', 'twin@whole'],
      },
      {
        kind: 'making',
        id: 'making',
        name: 'The maker’s ways of building',
        signs: ['usual@lid', 'usual@board'],
      },
    ]);
    // One in 10,000 pieces is the shop's: 0.81 to 4 times as many without it.
    expect(causes({ signs, shops: [shopOf('north', 0.01, habits)] }, ...found)).toEqual([
      {
        kind: 'making',
        id: 'making',
        name: 'The maker’s ways of building',
        signs: ['joint@whole', 'twin@whole', 'usual@lid', 'usual@board'],
      },
    ]);
  });
});
