import { expect, test } from 'vitest';
import published from '../../test/reference/bayes.json' with { type: 'json' };
import { jeffreyLikelihoods } from './jeffrey.ts';
import { posterior } from './posterior.ts';

const { jeffrey } = published;

test(`${jeffrey.what} (${jeffrey.source})`, () => {
  const likelihoods = jeffreyLikelihoods(jeffrey.before, jeffrey.after);
  likelihoods.forEach((value, index) => {
    expect(value).toBeCloseTo(jeffrey.likelihoods[index] as number, 12);
  });
  const network = {
    variables: [
      { id: 'colour', states: ['green', 'blue', 'violet'] },
      { id: 'sold', states: ['yes', 'no'] },
    ],
    tables: [
      { variable: 'colour', given: [], rows: [jeffrey.before] },
      { variable: 'sold', given: ['colour'], rows: jeffrey.soldGiven.map((share) => [share, 1 - share]) },
    ],
  };
  const before = posterior(network);
  const after = posterior(network, { soft: { colour: likelihoods } });
  if (!before.ok || !before.possible || !after.ok || !after.possible) throw new Error('no posterior');
  expect(before.posteriors.sold?.yes).toBeCloseTo(jeffrey.soldBefore, 12);
  expect(after.posteriors.sold?.yes).toBeCloseTo(jeffrey.soldAfter, 12);
  expect(Object.values(after.posteriors.colour ?? {})).toEqual(
    jeffrey.after.map((share) => expect.closeTo(share, 12)),
  );
});

test('what was impossible can’t be made possible', () => {
  expect(() => jeffreyLikelihoods([0, 1], [0.5, 0.5])).toThrow(RangeError);
  expect(() => jeffreyLikelihoods([1], [0.5, 0.5])).toThrow(RangeError);
});
