import { describe, expect, it } from 'vitest';
import { weighCase } from '../weighing/weighCase.ts';
import type { CaseToWeigh } from './caseToWeigh.ts';
import { smallKnowledge } from './testing/smallKnowledge.ts';

const knowledge = smallKnowledge();
const others: CaseToWeigh['findings'] = [
  { sign: 'plane-tracks', part: 'leg-left', state: 'present' },
  { sign: 'worn', part: 'leg-right', state: 'present' },
];

function weigh(...more: CaseToWeigh['findings']) {
  const result = weighCase(
    { form: 'bench', mode: 'in-hand', draws: 0, quick: true, findings: [...others, ...more] },
    knowledge,
    { yearNow: 2026 },
  );
  if (!result.ok) throw new Error(result.faults.map((each) => each.message).join(' '));
  return result.output;
}

const darkened = { sign: 'darkened', part: 'rail', state: 'present' } as const;
const odds = (output: ReturnType<typeof weigh>) => output.readings.map((each) => each.probability);

describe('a finding that was measured', () => {
  it('moves nothing where it is as probable either way', () => {
    const base = weigh();
    const alike: Record<string, number>[] = [
      { present: 2, absent: 2 },
      { natural: 1, none: 1, imitated: 1 },
    ];
    for (const likelihoods of alike) {
      const output = weigh({ ...darkened, likelihoods });
      odds(output).forEach((each, i) => {
        expect(each).toBeCloseTo(odds(base)[i] ?? Number.NaN, 10);
      });
    }
  });

  it('is a mixture of the sign there and not there, by the shares of its own figures', () => {
    // Bayes by hand over the readings: p(data) = 0.8 p(sign) + 0.2 p(no sign), so evidence is the mixture of the two sure cases.
    const evidence = (present: number, absent: number) =>
      Math.exp(weigh({ ...darkened, likelihoods: { present, absent } }).logEvidence);
    const sure = evidence(99, 1);
    const sureNot = evidence(1, 99);
    // 0.99 · (1, 1/99) and back: solve for the two corners, then mix.
    const there = (sure - sureNot / 99) / (0.99 * (1 - 1 / 99 ** 2));
    const not = (sureNot - sure / 99) / (0.99 * (1 - 1 / 99 ** 2));
    expect(evidence(4, 1)).toBeCloseTo(0.99 * (there + not / 4), 12);
  });

  it('speaks of the cause itself where its states are named, and counts for 99 to 1 at most', () => {
    const strong = weigh({ ...darkened, likelihoods: { natural: 1e9, none: 1, imitated: 1 } });
    const bounded = weigh({ ...darkened, likelihoods: { natural: 99, none: 1, imitated: 1 } });
    odds(strong).forEach((each, i) => {
      expect(each).toBeCloseTo(odds(bounded)[i] ?? Number.NaN, 10);
    });
    expect(odds(strong)[0]).toBeGreaterThan(odds(weigh())[0] ?? 1);
  });

  it('of the making takes the place of every rate of the sign, a shop’s habit too', () => {
    // Odd joints are the habit of North; a measurement as probable under every making says nothing even of North’s work.
    const alike = { period: 1, 'bench-copy': 1, 'machine-copy': 1, 'to-deceive': 1 };
    const output = weigh({ sign: 'odd-joint', part: 'rail', state: 'present', likelihoods: alike });
    odds(output).forEach((each, i) => {
      expect(each).toBeCloseTo(odds(weigh())[i] ?? Number.NaN, 10);
    });
    expect(output.weights.at(-1)?.withinWhole).toBeCloseTo(0, 9);
  });

  it('is left out with the reason where it says nothing of a state', () => {
    const output = weigh({ ...darkened, likelihoods: { natural: 3, none: 1 } });
    expect(output.ignored).toEqual([
      expect.objectContaining({ why: expect.stringContaining('under imitated') }),
    ]);
  });
});
