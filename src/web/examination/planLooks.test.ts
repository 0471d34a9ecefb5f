import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NextLook } from '../../weighing/lookPlan.ts';
import { planLooks, sayMinutes, sayNeed } from './planLooks.ts';

const look = (sign: string, bits: number, minutes: number, needs = 'nothing'): NextLook => ({
  sign,
  part: null,
  bits,
  minutes,
  needs,
});

describe('what to look at on this visit', () => {
  it('puts the most telling for its minutes first and counts the minutes', () => {
    const plan = planLooks([look('slow', 0.3, 10), look('quick', 0.1, 1), look('mute', 0, 1)], {
      minutes: undefined,
      mayNot: [],
    });
    expect(plan.map((one) => [one.look.sign, one.minutesGone])).toEqual([
      ['quick', 1],
      ['slow', 11],
    ]);
  });

  it('passes over what there is no leave for', () => {
    const looks = [look('under-seat', 0.5, 2, 'seat-lifted'), look('back', 0.1, 2)];
    expect(planLooks(looks, { minutes: 30, mayNot: ['seat-lifted'] }).map((one) => one.look.sign)).toEqual([
      'back',
    ]);
  });

  it('never runs over the time there is (property)', () => {
    const anyLook = fc.record({
      bits: fc.double({ min: 0, max: 2, noNaN: true }),
      minutes: fc.integer({ min: 1, max: 30 }),
    });
    fc.assert(
      fc.property(fc.array(anyLook, { maxLength: 20 }), fc.integer({ min: 0, max: 60 }), (looks, minutes) => {
        const plan = planLooks(
          looks.map((one, i) => look(`s${i}`, one.bits, one.minutes)),
          { minutes, mayNot: [] },
        );
        expect(plan.at(-1)?.minutesGone ?? 0).toBeLessThanOrEqual(minutes);
      }),
      { seed: 5 },
    );
  });
});

it('says half minutes as halves', () => {
  expect([0.5, 3.5, 2].map(sayMinutes)).toEqual(['½ min', '3½ min', '2 min']);
});

describe('a sign that can be on several parts', () => {
  it('is named once, where it tells most', () => {
    const on = (part: string, bits: number) => ({ ...look('arcs', bits, 1), part });
    const plan = planLooks([on('splat', 0.1), on('front-rail', 0.2)], { minutes: undefined, mayNot: [] });
    expect(plan.map((one) => one.look.part)).toEqual(['front-rail']);
  });
});

it('pulls a drawer out where the piece may not be turned over', () => {
  const looks = [
    { ...look('saw-arcs', 0.2, 1, 'pulled-out'), part: 'drawer-1' },
    look('feet', 0.3, 1, 'turned-over'),
  ];
  expect(looks.map((one) => sayNeed(one.needs))).toEqual(['Pull it out', 'Turn it over']);
  const plan = planLooks(looks, { minutes: 10, mayNot: ['turned-over'] });
  expect(plan.map((one) => one.look.sign)).toEqual(['saw-arcs']);
});
