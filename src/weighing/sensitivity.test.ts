import { describe, expect, it } from 'vitest';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { weighCase } from './weighCase.ts';

const present = (sign: string, part?: string) =>
  ({ sign, state: 'present', ...(part === undefined ? {} : { part }) }) as const;

describe('the figures that the leading reading hangs on', () => {
  // Eleven signs: ten that weigh, the first with the widest range; and one that weighs nothing but whose figure could be anything.
  const shares = Object.fromEntries(
    Array.from({ length: 10 }, (_, n) => [`s${n}`, [`50, ${40 + n}–${60 - n}`, '45', '45', '45'] as const]),
  );
  const knowledge = handKnowledge({ mute: ['45, 1–99', '45', '45', '45'], ...shares }, [40, 30, 20, 10]);
  const findings = Object.keys(knowledge.signs).map((sign) => present(sign));
  const told = () => {
    const result = weighCase({ form: 'box', mode: 'in-hand', draws: 0, findings }, knowledge, {
      yearNow: 2026,
    });
    if (!result.ok) throw new Error('the case was refused');
    return result.output;
  };

  it('are told for the ten weightiest findings, the eight that move it most, those first', () => {
    const { sensitivity, leading } = told();
    expect(leading).toBe('period-intact');
    expect(sensitivity.map(({ figure }) => figure)).toEqual(
      Array.from({ length: 8 }, (_, n) => `Sign s${n}: period`),
    );
  });

  it('are each moved alone from the lowest to the highest', () => {
    const { sensitivity } = told();
    // Period against the rest is 40 : 60 times (50/45)^10 and the mute sign, 1; at 40 and 60 for 50 it is 0.8 and 1.2 times that.
    const odds = (40 / 60) * (50 / 45) ** 10;
    const probability = (times: number) => (odds * times) / (1 + odds * times);
    expect(sensitivity[0]?.low).toBeCloseTo(probability(0.8), 9);
    expect(sensitivity[0]?.high).toBeCloseTo(probability(1.2), 9);
    expect(sensitivity[7]?.low).toBeCloseTo(probability(47 / 50), 9);
    expect(sensitivity[7]?.high).toBeCloseTo(probability(53 / 50), 9);
  });

  it('include what a shop’s file says of its habit', () => {
    const shop = weighCase(
      {
        form: 'bench',
        mode: 'in-hand',
        draws: 0,
        claim: { place: 'Northam' },
        findings: [present('odd-joint', 'rail')],
      },
      smallKnowledge(),
      { yearNow: 2019 },
    );
    const named = shop.ok ? shop.output.sensitivity.map(({ figure }) => figure) : [];
    expect(named).toContain('Sign odd-joint: habit of North');
    expect(named).toContain('Sign odd-joint: period');
    expect(named.filter((each) => each.includes('South'))).toEqual([]);
  });
});
