import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/statistics.json' with { type: 'json' };
import { normalDraw, seededRandom } from '../ground/seededRandom.ts';
import { median } from '../ground/statistics.ts';
import { likenessGroups, likenessOutliers, type Member } from './likeness.ts';
import { grubbs, meanAndSd, modifiedZ, robustOutliers } from './robustOutliers.ts';
import { groupsAt, singleLinkage } from './singleLinkage.ts';
import { grubbsCritical } from './studentT.ts';

// Values and their sources: test/reference/statistics.json.

const seed = 1993;
const sizes = fc.array(fc.double({ min: 100, max: 900, noNaN: true }), { minLength: 5, maxLength: 14 });

describe('values from outside', () => {
  test.each(reference.meansAndSpreads)('$id', ({ y, mean, sd, relativeTolerance }) => {
    const found = meanAndSd(y);
    expect(Math.abs(found.mean / mean - 1)).toBeLessThan(relativeTolerance);
    expect(Math.abs(found.sd / sd - 1)).toBeLessThan(relativeTolerance);
  });

  test.each(reference.robust)('$id', ({ x, median: middle, mad, tolerance }) => {
    expect(Math.abs(median(x) - middle)).toBeLessThan(tolerance);
    const wild = Math.max(...x);
    const score = modifiedZ(x)[x.indexOf(wild)] as number;
    expect(Math.abs(score - (0.6745 * (wild - middle)) / mad)).toBeLessThan(1e-6);
    expect(robustOutliers(x)[x.indexOf(wild)]).toMatchObject({ byModifiedZ: true, byExtremeDeviates: true });
  });

  test('Grubbs’ statistic and its critical values', () => {
    const { x, suspect, G, criticalOneSided, criticalTwoSided, tolerance } = reference.grubbs;
    const found = grubbs(x);
    expect(x[found.index]).toBe(suspect);
    expect(Math.abs(found.G - G)).toBeLessThan(tolerance);
    expect(Math.abs(grubbsCritical(x.length, 0.05, 1) - criticalOneSided)).toBeLessThan(tolerance);
    expect(Math.abs(grubbsCritical(x.length, 0.05, 2) - criticalTwoSided)).toBeLessThan(tolerance);
  });

  test('single linkage of six cities', () => {
    const { labels, distances, merges } = reference.singleLinkage;
    const found = singleLinkage(distances);
    expect(found.map(({ height }) => height)).toEqual(merges.map(({ height }) => height));
    expect(found.map(({ members }) => members.map((index) => labels[index]).sort())).toEqual(
      merges.map(({ members }) => members),
    );
    expect(groupsAt(6, found, 260)).toEqual([[0, 3, 4], [1], [2, 5]]);
  });
});

describe('outliers', () => {
  test('do not hang on the order, nor on where and in what unit lengths begin', () => {
    fc.assert(
      fc.property(sizes, fc.double({ min: 0.1, max: 20, noNaN: true }), (values, scale) => {
        const scores = modifiedZ(values);
        modifiedZ(values.map((value) => 50 + scale * value)).forEach((score, index) => {
          expect(score).toBeCloseTo(scores[index] as number, 6);
        });
        expect(modifiedZ([...values].reverse()).reverse()).toEqual(scores);
      }),
      { seed },
    );
  });

  test('with most values alike one that is not still stands out', () => {
    expect(modifiedZ([10, 10, 10, 10, 10, 10, 10, 100])[7]).toBeGreaterThan(3.5);
    expect(modifiedZ([7, 7, 7, 7, 7])).toEqual([0, 0, 0, 0, 0]);
    expect(() => robustOutliers([1, 2, 3, 4])).toThrow(RangeError);
  });

  test('a difference within what the tape leaves is none', () => {
    const members = [431, 431.2, 430.9, 431.1, 432.4].map((height, index): Member => ({
      id: String(index), measures: { height } })); // biome-ignore format: a row
    expect(likenessOutliers(members, 1).outliers).toEqual([]);
    expect(likenessOutliers(members, 0.2).outliers.map(({ id }) => id)).toEqual(['4']);
  });

  test('even spreads seldom give one: at most 12 in 100 of drawn sets of eight', () => {
    const draw = normals(8);
    let called = 0;
    for (let set = 0; set < 1000; set++) {
      const values = Array.from({ length: 8 }, () => 500 + 2 * draw());
      if (robustOutliers(values).some((each) => each.byModifiedZ && each.byExtremeDeviates)) called++;
    }
    expect(called).toBeLessThan(120);
    expect(called).toBeGreaterThan(0);
  });
});

describe('groups', () => {
  test('do not hang on the order of members, and every member is in one', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 400, max: 480 }), { minLength: 2, maxLength: 9 }),
        (heights) => {
          const members = heights.map((height): Member => ({ id: `h${height}`, measures: { height } }));
          const asSets = (groups: string[][]) => groups.map((group) => [...group].sort().join(' ')).sort();
          const groups = likenessGroups(members, 1, 3);
          expect(asSets(likenessGroups([...members].reverse(), 1, 3))).toEqual(asSets(groups));
          expect(groups.flat().sort()).toEqual(members.map(({ id }) => id).sort());
          // In one measure single linkage is the gaps: apart just where neighbours differ by more than the cut.
          const cut = 3 * Math.SQRT2 * Math.hypot(1, 3);
          const sorted = [...heights].sort((a, b) => a - b);
          const gaps = sorted.filter(
            (height, index) => index > 0 && height - (sorted[index - 1] as number) > cut,
          );
          expect(groups).toHaveLength(gaps.length + 1);
        },
      ),
      { seed },
    );
  });

  test('kinds are apart, and so is a member that shares no measure', () => {
    const members: Member[] = [
      { id: 'a', kind: 'armchair', measures: { height: 900 } },
      { id: 'b', kind: 'side-chair', measures: { height: 900 } },
      { id: 'c', kind: 'side-chair', measures: { height: 901 } },
      { id: 'd', kind: 'side-chair', measures: { depth: 901 } },
    ];
    expect(likenessGroups(members, 1, 3)).toEqual([['a'], ['b', 'c'], ['d']]);
  });
});

/** Normal numbers from a seed. */
function normals(seed: number): () => number {
  const random = seededRandom(seed);
  return () => normalDraw(random);
}
