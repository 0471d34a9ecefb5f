import { expect, test } from 'vitest';
import {
  envyIn,
  hasEqualGain,
  hasHighestSum,
  isEnvyFreeUpToOne,
  isProportional,
  wholeLots,
  worthToEach,
} from './divided.ts';
import { exact, nothing } from './exactMoney.ts';
import type { Estate } from './lots.ts';

const estate = (...values: number[][]): Estate => ({
  heirs: values.map((_, heir) => `heir ${heir}`),
  lots: (values[0] ?? []).map((_, lot) => ({ items: [`lot ${lot}`] })),
  values: values.map((row) => row.map(exact)),
});
const told = (of: Estate, holder: number[]) => {
  const divided = { share: wholeLots(of, holder), payments: of.heirs.map(() => nothing) };
  const worth = worthToEach(of, divided);
  return {
    envy: envyIn(worth).map(({ heir, of: other, by }) => [heir, other, by.valueOf()]),
    upToOne: isEnvyFreeUpToOne(of, divided),
    proportional: isProportional(of, worth),
    equalGain: hasEqualGain(of, worth),
    highest: hasHighestSum(of, divided),
  };
};

// Each can be gone through on paper.
test('what holds of a division where one heir has everything', () => {
  expect(told(estate([5, 4, 3], [6, 2, 4]), [1, 1, 1])).toEqual({
    envy: [[0, 1, 12]],
    upToOne: false,
    proportional: false,
    equalGain: false,
    highest: false,
  });
});

test('envy that one lot accounts for, and a division all agree on', () => {
  const some = told(estate([9, 1], [8, 2]), [0, 1]);
  expect(some).toMatchObject({ envy: [[1, 0, 6]], upToOne: true, proportional: false, highest: true });
  expect(told(estate([6, 4], [4, 6]), [0, 1])).toEqual({
    envy: [],
    upToOne: true,
    proportional: true,
    equalGain: true,
    highest: true,
  });
});
