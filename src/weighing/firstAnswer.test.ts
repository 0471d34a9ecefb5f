import { expect, it } from 'vitest';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import type { FirstAnswer } from './firstAnswer.ts';
import { weighCase } from './weighCase.ts';

const knowledge = smallKnowledge();

/** What a weighing tells first, and what it comes to. */
function weigh(quick: boolean) {
  const told: FirstAnswer[] = [];
  const result = weighCase(
    {
      form: 'bench',
      mode: 'in-hand',
      findings: [
        { sign: 'plane-tracks', part: 'leg-left', state: 'present' },
        { sign: 'odd-joint', part: 'rail', state: 'present' },
        { sign: 'worn', part: 'leg-right', state: 'could-not-tell' },
      ],
      draws: 10,
      quick,
    },
    knowledge,
    { yearNow: 2026, onFirst: (answer) => told.push(answer) },
  );
  if (!result.ok) throw new Error('refused');
  return { told, output: result.output };
}

it('tells readings, years and parts once, as the whole weighing then has them', () => {
  const { told, output } = weigh(true);
  expect(told).toHaveLength(1);
  const { leading, readings, parts, years } = told[0] as FirstAnswer;
  expect({ leading, readings: readings.map(({ id }) => id) }).toEqual({
    leading: output.leading,
    readings: output.readings.map(({ id }) => id),
  });
  const { binding, ...wholeYears } = output.years;
  const whole = flat({ readings: output.readings, parts: output.parts, years: wholeYears });
  const first = flat({ readings, parts, years });
  expect(binding).toBeDefined();
  expect(first.map(([path]) => path)).toEqual(whole.map(([path]) => path));
  // Where the stricter sums are worked out besides, the same products are added in another order.
  first.forEach(([path, value], at) => {
    const other = whole[at]?.[1];
    if (typeof value === 'number') expect(Math.abs(value - Number(other)), path).toBeLessThan(1e-12);
    else expect(value, path).toBe(other);
  });
});

it('tells nothing first where more than a quick weighing is asked for', () => {
  expect(weigh(false).told).toEqual([]);
});

/** Every value of an object with the way to it. */
function flat(value: unknown, path = ''): [string, unknown][] {
  return typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, each]) => flat(each, `${path}/${key}`))
    : [[path, value]];
}
