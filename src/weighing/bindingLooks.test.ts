import { expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { alterationOf, handPieces, signOf } from '../evidence/testing/handPieces.ts';
import { weighCase } from './weighCase.ts';

const shares = { 'in-use': 80, 'out-of-use': 5 };
const mild = { 'in-use': 80, 'out-of-use': 40 };
const dated = (id: string, span: object) => ({ ...signOf(id, 'year', shares), span: span as never });
const trace = signOf('trace', 'alteration/waxed', { happened: 60, not: 2 });
const until = { earliest: 1600, commonFrom: 1600 };
const knowledge = handPieces({
  signs: [
    dated('a', { earliest: 1700, commonFrom: 1735 }),
    dated('b', { earliest: 1700, commonFrom: 1745 }),
    dated('c', { earliest: 1700, commonFrom: 1755 }),
    dated('d', { earliest: 1700, commonFrom: 1765 }),
    dated('e', { ...until, commonUntil: 1740, latest: 1800 }),
    dated('f', { ...until, commonUntil: 1760, latest: 1800 }),
    // Half as often out of its years as in them.
    { ...signOf('mild-from', 'year', mild), span: { earliest: 1700, commonFrom: 1760 } as never },
    { ...signOf('mild-until', 'year', mild), span: { ...until, commonUntil: 1740, latest: 1800 } as never },
    // Of every year alike.
    dated('g', until),
    trace,
  ],
  alterations: [alterationOf('waxed', 'upkeep', 10)],
});

function years(findings: CaseToWeigh['findings']) {
  const result = weighCase(
    { form: 'box', mode: 'in-hand', quick: true, claim: { period: [1700, 1790] }, findings },
    knowledge,
    { yearNow: 2026 },
  );
  if (!result.ok) throw new Error('the case was refused');
  return result.output.years;
}

/** The years in which a twentieth and nineteen twentieths of the curve are reached, added up from the curve as it is told. */
function ends({ density }: ReturnType<typeof years>): [number, number] {
  const reached = (share: number) => {
    let held = 0;
    return density.find(([, each]) => {
      held += each;
      return held >= share;
    })?.[0];
  };
  return [reached(0.05) ?? Number.NaN, reached(0.95) ?? Number.NaN];
}

it('are those without which the years would reach further out, at most three for each end', () => {
  const at = (sign: string, part?: string) =>
    ({ sign, state: 'present', ...(part === undefined ? {} : { part }) }) as const;
  const early = [at('a'), at('b', 'lid'), at('c'), at('d', 'board')];
  const findings = [...early, at('e'), at('f', 'lid'), at('g'), at('trace', 'lid')];
  const told = years(findings);
  const [first, last] = ends(told);
  // Each finding taken out, the rest weighed anew.
  const moved = findings.map((left) => {
    const [from, to] = ends(years(findings.filter((each) => each !== left)));
    return { sign: left.sign, part: 'part' in left ? left.part : null, from: first - from, to: to - last };
  });
  const binding = (end: 'from' | 'to') =>
    moved
      .filter((each) => each[end] > 0)
      .toSorted((a, b) => b[end] - a[end])
      .map(({ sign, part }) => ({ sign, part, end }));
  // More than three bind the early end, and some bind neither.
  expect(binding('from').length).toBeGreaterThan(3);
  expect(binding('to').length).toBeGreaterThan(0);
  expect(told.binding).toEqual([...binding('from').slice(0, 3), ...binding('to').slice(0, 3)]);
  expect(told.binding.map(({ sign }) => sign)).not.toContain('g');
});

it('stand for each end with the one that binds most first, in whatever order they were found', () => {
  const at = (sign: string, part: string) => ({ sign, part, state: 'present' }) as const;
  const found = [at('mild-from', 'lid'), at('d', 'board'), at('mild-until', 'lid'), at('e', 'board')];
  for (const findings of [found, found.toReversed()])
    expect(years(findings).binding).toEqual([
      { sign: 'd', part: 'board', end: 'from' },
      { sign: 'mild-from', part: 'lid', end: 'from' },
      { sign: 'e', part: 'board', end: 'to' },
      { sign: 'mild-until', part: 'lid', end: 'to' },
    ]);
});

it('are none where nothing dates the piece', () => {
  expect(years([{ sign: 'trace', part: 'lid', state: 'present' }]).binding).toEqual([]);
  expect(years([]).binding).toEqual([]);
});
