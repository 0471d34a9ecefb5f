import { median } from '../ground/statistics.ts';
import { leastForOutliers, meanAndSd, robustOutliers } from './robustOutliers.ts';
import { groupsAt, singleLinkage } from './singleLinkage.ts';

/** One member of a set and what was measured on it, mm by name. */
export type Member = { id: string; kind?: string | undefined; measures: Record<string, number> };

/** What one measure is among members of one kind. */
export type MeasureSpread = {
  kind: string;
  measure: string;
  count: number;
  medianMm: number;
  sdMm: number;
  rangeMm: number;
};

/** A member that stands out in one measure. */
export type Outlier = {
  id: string;
  measure: string;
  valueMm: number;
  medianMm: number;
  z: number;
  test: 'modified-z' | 'modified-z and extreme-deviates';
};

/** Members further apart than this many standard deviations of what hands and tape leave are not of one group. */
const groupDistance = 3;

/** The spread of each measure, kind by kind. */
export function measureSpreads(members: readonly Member[]): MeasureSpread[] {
  return byKindAndMeasure(members).map(({ kind, measure, entries }) => {
    const values = entries.map(({ value }) => value);
    return {
      kind,
      measure,
      count: values.length,
      medianMm: median(values),
      sdMm: meanAndSd(values).sd,
      rangeMm: Math.max(...values) - Math.min(...values),
    };
  });
}

/**
 * Which members of a set stand out among their own kind.
 *
 * Method: measure by measure among members of one kind, by `robustOutliers` where there are five or more; a value counts
 * only if it is also further from the median than twice the measuring uncertainty, so that chairs alike to a hair do not
 * condemn one that is a hair off.
 *
 * @param sigmaMm  standard uncertainty of one measure
 * @returns the outliers, and the kinds and measures that were too few to test
 * @source Iglewicz and Hoaglin 1993; the bound of twice the uncertainty: ours, after the coverage factor 2 of JCGM 100:2008
 */
export function likenessOutliers(
  members: readonly Member[],
  sigmaMm: number,
): { outliers: Outlier[]; tooFew: { kind: string; measure: string; count: number }[] } {
  const tables = byKindAndMeasure(members);
  const outliers = tables
    .filter(({ entries }) => entries.length >= leastForOutliers)
    .flatMap(({ measure, entries }) => {
      const values = entries.map(({ value }) => value);
      const medianMm = median(values);
      return robustOutliers(values).flatMap((standing, index): Outlier[] => {
        const far = Math.abs(standing.value - medianMm) > 2 * sigmaMm;
        if (!standing.byModifiedZ || !far) return [];
        const { id } = entries[index] as { id: string };
        const test = standing.byExtremeDeviates ? 'modified-z and extreme-deviates' : 'modified-z';
        return [{ id, measure, valueMm: standing.value, medianMm, z: standing.z, test }];
      });
    });
  const tooFew = tables
    .filter(({ entries }) => entries.length < leastForOutliers)
    .map(({ kind, measure, entries }) => ({ kind, measure, count: entries.length }));
  return { outliers, tooFew };
}

/**
 * Which members go together by their sizes.
 *
 * Method: the distance of two members of one kind is the largest of their differences over the measures both
 * have, in units of what two of one set differ by: √2 times measuring and hand together. Groups are those that stay apart
 * under single linkage up to 3 such units. Members of other kinds, and those without a measure in common, are apart.
 *
 * @param handMm  how far a maker’s hand lets pieces of one set differ, standard deviation
 * @returns ids, each group in the order of the members
 * @source single linkage: Sneath 1957, from memory; its units and the cut at 3: ours
 */
export function likenessGroups(members: readonly Member[], sigmaMm: number, handMm: number): string[][] {
  const unit = Math.SQRT2 * Math.hypot(sigmaMm, handMm);
  const distances = members.map((one) => members.map((two) => distance(one, two) / unit));
  const groups = groupsAt(members.length, singleLinkage(distances), groupDistance);
  return groups.map((group) => group.map((index) => (members[index] as Member).id));
}

function distance(one: Member, two: Member): number {
  const shared = Object.keys(one.measures).filter((name) => two.measures[name] !== undefined);
  if (one.kind !== two.kind || shared.length === 0) return Number.MAX_VALUE;
  return Math.max(
    ...shared.map((name) => Math.abs((one.measures[name] as number) - (two.measures[name] as number))),
  );
}

function byKindAndMeasure(members: readonly Member[]) {
  const kinds = [...new Set(members.map(({ kind }) => kind ?? ''))];
  return kinds.flatMap((kind) => {
    const ofKind = members.filter((member) => (member.kind ?? '') === kind);
    const measures = [...new Set(ofKind.flatMap((member) => Object.keys(member.measures)))];
    return measures.map((measure) => ({
      kind,
      measure,
      entries: ofKind.flatMap(({ id, measures: own }) =>
        own[measure] === undefined ? [] : [{ id, value: own[measure] as number }],
      ),
    }));
  });
}
