import { formatYears, type YearSpan } from '../units/years.ts';
import { type Holding, holdsTitle } from './holding.ts';
import { type Impossible, impossibleIn } from './impossible.ts';
import { inOrder, type Placed } from './inOrder.ts';

/** Years of which nobody is known to have held the piece; an end is left out where it is not known. */
export type Gap = { after?: string; before?: string; from?: number; to?: number; words: string };

/** Years in which two are said to have owned it. */
export type Overlap = { names: [string, string]; from: number; to: number; words: string };

/** What is wrong or open in a chain of owners. */
export type ChainCheck = {
  ordered: Placed[];
  gaps: Gap[];
  overlaps: Overlap[];
  impossible: Impossible[];
  remarks: string[];
};

/**
 * Where is a chain of owners broken, doubled or impossible?
 *
 * Method: holdings stand in the order in which they began. A gap lies between the latest year by which one ended and the earliest in which
 * the next began; where a year is missing the link itself is open. Overlaps are counted for owners and dealers only, and only years in
 * which both must have had it. Doubt of dates always speaks for the chain: what is called impossible is so under every year that is left.
 *
 * @param made  the earliest and latest year of making
 * @source gaps are shown and not bridged: the AAM Guide to Provenance Research (2001) as quoted in the Carnegie Museum of Art's drafts
 *   (2015, 2016), of which the openings were read; the rest is our own arithmetic of years
 */
export function checkChain(holdings: readonly Holding[], made: YearSpan | undefined): ChainCheck {
  const ordered = inOrder(holdings);
  const owners = ordered.filter(holdsTitle);
  const gaps = gapsIn(owners, made);
  return {
    ordered,
    gaps,
    overlaps: overlapsIn(owners),
    impossible: ordered.flatMap((holding) => impossibleIn(holding, made)),
    remarks: remarksOn(gaps, ordered),
  };
}

function gapsIn(owners: readonly Placed[], made: YearSpan | undefined): Gap[] {
  const first = owners[0];
  if (first === undefined) return [];
  return [
    ...beforeFirst(first, made),
    ...owners.slice(1).flatMap((next, index) => gapBetween(owners[index] as Placed, next)),
  ];
}

/** From the making to the first who is told of; one for whom it was made had it from then on. */
function beforeFirst({ name, began, how }: Placed, made: YearSpan | undefined): Gap[] {
  if (made === undefined) return [];
  if (began !== undefined) return began[0] > made[1] + 1 ? [gap(undefined, name, made[1], began[0])] : [];
  if (how === 'made' || how === 'commissioned') return [];
  const words = `From when ${name} had it is not told, so who had it since it was made, ${formatYears(made)}, is open.`;
  return [{ before: name, from: made[1], words }];
}

function gapBetween(one: Placed, next: Placed): Gap[] {
  const [to, from] = [next.began?.[0], one.ended?.[1]];
  if (from !== undefined && to !== undefined)
    return to - from > 1 ? [gap(one.name, next.name, from, to)] : [];
  return next.direct === 'yes' ? [] : [gap(one.name, next.name, from, to)];
}

function gap(
  after: string | undefined,
  before: string,
  from: number | undefined,
  to: number | undefined,
): Gap {
  const between = after === undefined ? `before ${before}` : `between ${after} and ${before}`;
  const years =
    from !== undefined && to !== undefined
      ? `from ${from} to ${to}`
      : from !== undefined
        ? `after ${from}, for how long is not known`
        : to !== undefined
          ? `before ${to}, for how long is not known`
          : 'of which no year is known';
  return {
    ...(after === undefined ? {} : { after }),
    before,
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    words:
      after === undefined
        ? `Nothing is known of who had it ${between}, ${years}: the time since it was made.`
        : `Nothing is known of who had it ${between}, ${years}.`,
  };
}

function overlapsIn(owners: readonly Placed[]): Overlap[] {
  return owners.flatMap((one, index) =>
    owners.slice(index + 1).flatMap((other): Overlap[] => {
      const from = Math.max(
        one.began?.[1] ?? Number.POSITIVE_INFINITY,
        other.began?.[1] ?? Number.POSITIVE_INFINITY,
      );
      const to = Math.min(
        one.ended?.[0] ?? Number.NEGATIVE_INFINITY,
        other.ended?.[0] ?? Number.NEGATIVE_INFINITY,
      );
      if (from >= to) return [];
      return [
        {
          names: [one.name, other.name],
          from,
          to,
          words: `${one.name} and ${other.name} are both said to have had it ${formatYears([from, to])}: was it shared, or is one of the dates wrong?`,
        },
      ];
    }),
  );
}

/**
 * What museums ask about besides, as a reminder and never as a reproach. It does not bear on a gap of which the owners before and after are told of at
 * one and the same place: nothing says that the piece was ever elsewhere.
 */
function remarksOn(gaps: readonly Gap[], holdings: readonly Placed[]): string[] {
  const placeOf = (name: string | undefined) =>
    holdings
      .find((holding) => holding.name === name)
      ?.place.trim()
      .toLowerCase() ?? '';
  const bears = gaps.some(
    ({ from = 0, to = 9999, after, before }) =>
      from < 1945 && to > 1933 && (placeOf(after) === '' || placeOf(after) !== placeOf(before)),
  );
  return bears
    ? [
        'What is open takes in 1933 to 1945. If the piece was in Europe then, museums ask where it was: say that it is open, and leave the rest to counsel and the registers of lost art (common practice of museums, from memory).',
      ]
    : [];
}
