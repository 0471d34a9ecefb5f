/**
 * When a dated sign could have come to be: its share rises straight from `earliest` to `commonFrom`, stays, and falls
 * straight from `commonUntil` to `latest`. An end left out is open.
 */
export type DatedSign = {
  earliest?: number | undefined;
  /** A year up to which it shows at most a twentieth of its height; it bends there. */
  rareUntil?: number | undefined;
  commonFrom?: number | undefined;
  commonUntil?: number | undefined;
  latest?: number | undefined;
  /** Share shown outside the span, on the scale of its height; 0, the default, where nothing shows it there. */
  outside?: number;
  /** Nothing shows it before `earliest`, whatever `outside` says. */
  hardFloor?: boolean;
};

/**
 * How readily a sign shows in a year, 1 at its height.
 *
 * @param year    the year asked for
 * @param inside  a year of the same stretch between two bends, so that a jump belongs to the right side
 */
export function showing(sign: DatedSign, year: number, inside = year): number {
  const { outside = 0 } = sign;
  if (sign.hardFloor && sign.earliest !== undefined && inside < sign.earliest) return 0;
  return outside + (1 - outside) * Math.min(rise(sign, year, inside), fall(sign, year, inside));
}

const rareShare = 0.05;

function rise({ earliest, rareUntil, commonFrom }: DatedSign, year: number, inside: number): number {
  const from = earliest ?? commonFrom;
  if (from === undefined) return 1;
  const to = commonFrom ?? from;
  if (inside >= to) return 1;
  if (inside <= from) return 0;
  if (rareUntil === undefined) return (year - from) / (to - from);
  if (inside <= rareUntil) return (rareShare * (year - from)) / (rareUntil - from);
  return rareShare + ((1 - rareShare) * (year - rareUntil)) / (to - rareUntil);
}

function fall({ commonUntil, latest }: DatedSign, year: number, inside: number): number {
  const to = latest ?? commonUntil;
  if (to === undefined) return 1;
  const from = commonUntil ?? to;
  if (inside <= from) return 1;
  return inside >= to ? 0 : (to - year) / (to - from);
}

/** The years at which the course of a sign bends or jumps. */
export function bendsOf({ earliest, rareUntil, commonFrom, commonUntil, latest }: DatedSign): number[] {
  return [earliest, rareUntil, commonFrom, commonUntil, latest].filter((year) => year !== undefined);
}

/** The years outside which a sign rules a piece out: −∞ and ∞ where it does not. */
export function boundsOf(sign: DatedSign): { from: number; to: number } {
  const strict = (sign.outside ?? 0) === 0;
  const from = sign.earliest ?? sign.commonFrom;
  const to = sign.latest ?? sign.commonUntil;
  return {
    from: from !== undefined && (strict || sign.hardFloor === true) ? from : Number.NEGATIVE_INFINITY,
    to: to !== undefined && strict ? to : Number.POSITIVE_INFINITY,
  };
}
