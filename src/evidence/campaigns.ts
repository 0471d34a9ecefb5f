import type { Draw } from './figures.ts';
import type { Look, PreparedCase } from './preparedCase.ts';
import { midYear } from './yearAxis.ts';

/**
 * The kind of campaign a look may be a trace of: what is done to a whole piece at one time, its joints reglued, its parts
 * fastened anew, its surfaces stained, or sanded. It either happened to a piece or not, so that six joints with modern glue are
 * one event and not six witnesses.
 */
export function campaignOf({ sign }: Pick<Look, 'sign'>): string | undefined {
  return sign.campaign?.kind;
}

/**
 * How probable it is, by bin of the making, that a piece has been through a campaign since: 1 − e^(−ρ · years), at a constant
 * yearly rate, from when the means for it came into use.
 */
export function campaignByBin(prepared: PreparedCase, draw: Draw, kind: string): Float64Array {
  const { axis, yearNow, knowledge } = prepared;
  const campaign = knowledge.making.campaigns[kind];
  if (campaign === undefined) return new Float64Array(axis.bins);
  const inACentury = draw(campaign.inACentury);
  return Float64Array.from({ length: axis.bins }, (_, bin) => {
    const from = Math.max(midYear(axis, bin), campaign.since ?? Number.NEGATIVE_INFINITY);
    return 1 - (1 - inACentury) ** (Math.max(0, yearNow - from) / 100);
  });
}
