import fc from 'fast-check';
import { expect, it } from 'vitest';
import { groupLikelihood, type Report } from './groupLikelihood.ts';

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

it('keeps each sign its own share, however far the group goes together', () => {
  fc.assert(
    fc.property(
      fc.array(share, { minLength: 1, maxLength: 5 }),
      share,
      fc.nat(4),
      (shares, together, pick) => {
        const at = pick % shares.length;
        // A report that tells nothing of the others: only the picked sign's own share is left.
        const reports: Report[] = shares.map((_, i) =>
          i === at ? { ifThere: 1, ifNot: 0 } : { ifThere: 1, ifNot: 1 },
        );
        expect(groupLikelihood(shares, reports, together)).toBeCloseTo(shares[at] ?? 0, 10);
      },
    ),
    { seed: 7 },
  );
});

it('sums to 1 over all that could be reported', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(share, share, share), { minLength: 1, maxLength: 4 }),
      share,
      (signs, together) => {
        let sum = 0;
        for (let bits = 0; bits < 2 ** signs.length; bits++) {
          const reports = signs.map(([, there, not], i) =>
            (bits >> i) & 1 ? { ifThere: there, ifNot: not } : { ifThere: 1 - there, ifNot: 1 - not },
          );
          sum += groupLikelihood(
            signs.map(([each]) => each),
            reports,
            together,
          );
        }
        expect(sum).toBeCloseTo(1, 9);
      },
    ),
    { seed: 7 },
  );
});

it('lets the rarer show only with the commoner when the group is as one', () => {
  const seen = { ifThere: 1, ifNot: 0 };
  const not = { ifThere: 0, ifNot: 1 };
  expect(groupLikelihood([0.2, 0.6], [seen, seen], 1)).toBeCloseTo(0.2, 12);
  expect(groupLikelihood([0.2, 0.6], [seen, not], 1)).toBeCloseTo(0, 12);
  expect(groupLikelihood([0.2, 0.6], [not, seen], 1)).toBeCloseTo(0.4, 12);
});
