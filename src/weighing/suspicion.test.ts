import { expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import { type CaseToWeigh, caseToWeigh } from '../evidence/caseToWeigh.ts';
import { need } from '../knowledge/schema.ts';
import { suspicion } from './suspicion.ts';
import { weighCase } from './weighCase.ts';

const knowledge = await houseKnowledge();
const yearNow = 2026;
const chair = caseToWeigh.parse({
  form: 'armchair',
  mode: 'in-hand',
  claim: { period: [1760, 1785] },
  findings: [
    { sign: 'joint-pegged', part: 'side-rail-left', state: 'present' },
    { sign: 'shrinkage-out-of-round', part: 'leg-front-left', state: 'present' },
  ],
});

function weighed(input: CaseToWeigh, id: string): number {
  const result = weighCase({ ...input, quick: true, draws: 0 }, knowledge, { yearNow });
  if (!result.ok) throw new Error(result.faults[0]?.message);
  const found = result.output.alterations.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found.probability;
}

function asked(input: CaseToWeigh, id: string) {
  const result = suspicion(input, id, knowledge, yearNow);
  if (!result.ok) throw new Error(result.faults[0]?.message);
  return result.output;
}

const ids = ['arms-added', 'refinished'];

test.each(ids)('of %s it says what the weighing says, now and with each answer', (id) => {
  const { probability, looks } = asked(chair, id);
  expect(probability).toBeCloseTo(weighed(chair, id), 9);
  expect(looks.length).toBeGreaterThan(2);
  for (const { sign, part, ifFound, ifNot } of looks.slice(0, 3)) {
    const at = part === null ? { sign } : { sign, part };
    const withState = (state: 'present' | 'absent') =>
      weighed({ ...chair, findings: [...chair.findings, { ...at, state, sure: 'plain' }] }, id);
    expect(ifFound).toBeCloseTo(withState('present'), 9);
    expect(ifNot).toBeCloseTo(withState('absent'), 9);
  }
});

test.each(ids)('of %s the bits are those of both answers, each as probable as now believed', (id) => {
  const { probability: now, looks } = asked(chair, id);
  const doubt = (p: number) => -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);
  for (const { bits, ifFound, ifNot } of looks) {
    // What is believed now is the mean of what will be, so that the two answers tell how probable the sign is.
    const seen = (now - ifNot) / (ifFound - ifNot);
    expect(seen).toBeGreaterThan(0);
    expect(seen).toBeLessThan(1);
    expect(bits).toBeCloseTo(doubt(now) - seen * doubt(ifFound) - (1 - seen) * doubt(ifNot), 4);
  }
});

test('what was answered is asked no more, and what there is no leave for is left out', () => {
  const first = asked(chair, 'arms-added').looks[0];
  if (first === undefined) throw new Error('nothing to look at');
  const at = first.part === null ? { sign: first.sign } : { sign: first.sign, part: first.part };
  const after = asked(
    { ...chair, findings: [...chair.findings, { ...at, state: 'absent', sure: 'plain' }] },
    'arms-added',
  );
  expect(after.looks.map(({ sign, part }) => `${sign}@${part}`)).not.toContain(`${first.sign}@${first.part}`);
  const needs = need.parse(first.needs);
  const barred = asked({ ...chair, limits: { mayNot: [needs] } }, 'arms-added');
  expect(barred.looks.map(({ needs }) => needs)).not.toContain(first.needs);
});

test('an alteration that the form can not have had is refused in words', () => {
  const result = suspicion(chair, 'top-replaced', knowledge, yearNow);
  expect(result).toMatchObject({ ok: false, faults: [{ code: 'suspicion.not-here' }] });
});
