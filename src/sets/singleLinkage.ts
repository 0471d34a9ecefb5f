import { mean } from '../ground/statistics.ts';

/** Two groups that become one at a distance. */
export type Merge = { height: number; members: number[] };

/** What the distance between two groups is: that of their nearest members, of their furthest, or the mean of all pairs. */
export type Linkage = 'single' | 'complete' | 'average';

/**
 * How items fall together as the distance allowed between neighbours grows.
 *
 * Method: the two nearest groups merge, again and again; with single linkage the distance between groups is that of their
 * nearest members. Where two pairs are equally near, the one that comes first merges first.
 *
 * @param distances  number[n][n], symmetric, 0 on the diagonal
 * @returns n − 1 merges, heights rising; members are indices, rising
 * @accuracy repeats two programs on six cities (test/reference/statistics.json)
 * @source single linkage: Sneath 1957; complete and average: Sokal and Michener 1958, Sørensen 1948; from memory
 */
export function singleLinkage(
  distances: readonly (readonly number[])[],
  linkage: Linkage = 'single',
): Merge[] {
  let groups = distances.map((_, index) => [index]);
  const merges: Merge[] = [];
  while (groups.length > 1) {
    let best = { height: Number.POSITIVE_INFINITY, one: 0, two: 1 };
    for (let one = 0; one < groups.length; one++)
      for (let two = one + 1; two < groups.length; two++) {
        const height = between[linkage](pairsOf(groups[one] as number[], groups[two] as number[], distances));
        if (height < best.height) best = { height, one, two };
      }
    const members = [...(groups[best.one] as number[]), ...(groups[best.two] as number[])].sort(
      (a, b) => a - b,
    );
    groups = [...groups.filter((_, index) => index !== best.one && index !== best.two), members];
    merges.push({ height: best.height, members });
  }
  return merges;
}

/** The groups that stand where no two with a distance up to `height` are apart; the first member orders them. */
export function groupsAt(count: number, merges: readonly Merge[], height: number): number[][] {
  let groups = Array.from({ length: count }, (_, index) => [index]);
  for (const merge of merges.filter((each) => each.height <= height))
    groups = [...groups.filter((group) => !merge.members.includes(group[0] as number)), merge.members];
  return groups.sort((a, b) => (a[0] as number) - (b[0] as number));
}

function pairsOf(
  one: readonly number[],
  two: readonly number[],
  distances: readonly (readonly number[])[],
): number[] {
  return one.flatMap((a) => two.map((b) => distances[a]?.[b] as number));
}

const between: Record<Linkage, (pairs: readonly number[]) => number> = {
  single: (pairs) => Math.min(...pairs),
  complete: (pairs) => Math.max(...pairs),
  average: mean,
};
