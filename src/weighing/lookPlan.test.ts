import { describe, expect, it } from 'vitest';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { lookPlan, withinLimits } from './lookPlan.ts';
import { weighCase } from './weighCase.ts';
import type { Weighing } from './weighing.ts';

const look = (
  sign: string,
  bits: number,
  minutes: number,
  needs = 'nothing',
  part: string | null = null,
) => ({
  sign,
  part,
  bits,
  minutes,
  needs,
});
const looks: Weighing['nextLooks'] = [
  look('quick', 0.2, 1),
  look('long', 0.9, 9),
  look('under-the-seat', 0.5, 2, 'seat-lifted'),
  look('quick', 0.1, 1, 'nothing', 'rail'),
  look('dull', 0.0001, 0.1),
];

describe('what fits into the visit', () => {
  it('leaves out what may not be done and what takes longer than there is', () => {
    const left = withinLimits(looks, { minutesLeft: 5, mayNot: ['seat-lifted'] });
    expect(left.map((each) => each.sign)).toEqual(['quick', 'quick', 'dull']);
    expect(withinLimits(looks, undefined)).toEqual(looks);
  });

  it('takes most bits to the minute first, names a sign once and never runs over', () => {
    expect(lookPlan(looks, 10).map((each) => [each.look.sign, each.minutesGone])).toEqual([
      ['under-the-seat', 2],
      ['quick', 3],
    ]);
    expect(lookPlan(looks, 12).map((each) => each.look.sign)).toEqual(['under-the-seat', 'quick', 'long']);
  });
});

describe('limits in a case', () => {
  const knowledge = smallKnowledge();
  const weigh = (limits?: { minutesLeft?: number; mayNot?: ['seat-lifted'] }) => {
    const early: unknown[] = [];
    const result = weighCase(
      {
        form: 'bench',
        mode: 'in-hand',
        findings: [{ sign: 'darkened', part: 'rail', state: 'present' }],
        draws: 10,
        ...(limits === undefined ? {} : { limits }),
      },
      knowledge,
      { yearNow: 2026, onEarly: (part) => early.push(part), onProgress: () => early.push('progress') > 0 },
    );
    if (!result.ok) throw new Error('refused');
    return { output: result.output, early };
  };

  it('gives a plan only where minutes are told, and no look that does not fit', () => {
    expect(weigh().output.plan).toBeUndefined();
    const { output } = weigh({ minutesLeft: 3 });
    expect(output.plan?.length).toBeGreaterThan(0);
    expect(output.plan?.at(-1)?.minutesGone).toBeLessThanOrEqual(3);
    expect(output.nextLooks.length).toBeLessThanOrEqual(weigh().output.nextLooks.length);
    expect(weigh({ minutesLeft: 0.1 }).output.nextLooks).toEqual([]);
  });

  it('tells the next looks before the redraws begin', () => {
    const { output, early } = weigh({ minutesLeft: 3 });
    expect(early[0]).toEqual({ nextLooks: output.nextLooks, plan: output.plan });
    expect(early[1]).toBe('progress');
  });
});
