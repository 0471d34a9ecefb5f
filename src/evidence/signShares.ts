import type { Figure } from '../knowledge/figureSchema.ts';
import type { Making as MakingFile, Sign, Span } from '../knowledge/schema.ts';
import { witnesses } from './alikeLooks.ts';
import { type Draw, figureRange } from './figures.ts';
import { groupLikelihood, type Report, reportLikelihood } from './groupLikelihood.ts';
import type { Look } from './preparedCase.ts';
import { lineAt, midYear, type YearAxis } from './yearAxis.ts';

/**
 * The report of a look as the model sees it: how probable if the sign is there, and if not.
 *
 * Who is "fairly sure" has weighed already how seldom such a thing is met: a rare sign is falsely reported more rarely, in
 * proportion to how common it is, and a common one is as rarely missed.
 */
export function reportOf(look: Look, making: MakingFile, draw: Draw): Report {
  const report = singleReport(look, making, draw);
  if (look.alike === undefined) return report;
  return { ...report, counts: witnesses(look.alike, draw(making.alikeTogether)) / look.alike };
}

function singleReport(look: Look, making: MakingFile, draw: Draw): Report {
  if (look.measured !== undefined) return look.measured;
  const sureness = making.sureness[look.sure];
  const usual = look.usual ?? usualShare(look.sign);
  const odds = usual / (1 - usual);
  if (look.state === 'present')
    return { ifThere: draw(sureness.there), ifNot: draw(sureness.notThere) * Math.min(1, odds) };
  return { ifThere: (1 - draw(sureness.there)) * Math.min(1, 1 / odds), ifNot: 1 - draw(sureness.notThere) };
}

/** How common a sign is altogether: the mean of its best figures. */
export function usualShare(sign: Sign): number {
  const figures = Object.values(sign.shows);
  const mean = figures.reduce((sum, figure) => sum + figureRange(figure).best, 0) / figures.length;
  return Math.min(0.99, Math.max(0.01, mean));
}

/** Of such parts in this state of the sign's cause, the share that shows it; `standIn` where the state has no row. */
export function shareIn(sign: Sign, state: string, draw: Draw, standIn?: string): number {
  const figure: Figure | undefined =
    sign.shows[state] ?? (standIn === undefined ? undefined : sign.shows[standIn]);
  if (figure === undefined) throw new RangeError(`sign ${sign.id} gives no figure for ${state}`);
  return draw(figure);
}

/** What a sign shows in the year until which it is rare, of what it shows at its height. */
const rareShare = 0.05;

/**
 * For a sign that hangs on the year: the share that shows it by bin. It rises straight from its earliest year to the
 * year it is common from (by way of a twentieth in the year until which it is rare, if one is known), and falls likewise at its end; a hard floor lets nothing show it earlier.
 */
export function shareByYear(sign: Sign, axis: YearAxis, draw: Draw): Float64Array {
  const inUse = shareIn(sign, 'in-use', draw);
  const outOfUse = shareIn(sign, 'out-of-use', draw);
  const { span } = sign;
  return Float64Array.from({ length: axis.bins }, (_, bin) => {
    const year = midYear(axis, bin);
    if (span === undefined) return outOfUse;
    if (span.hardFloor && year < span.earliest) return 0;
    const height = Math.min(rise(year, span), fall(year, span.commonUntil, span.latest));
    return outOfUse + (inUse - outOfUse) * height;
  });
}

function rise(year: number, { earliest, rareUntil, commonFrom }: Span): number {
  if (year >= commonFrom) return 1;
  const rare = rareUntil === undefined ? [] : ([[rareUntil, rareShare]] as const);
  return lineAt([[earliest, 0], ...rare, [commonFrom, 1]], year);
}

function fall(year: number, from: number | undefined, to: number | undefined): number {
  // A trait with no known end never went out; one with no `latest` fades over the fifty years after it was common.
  if (from === undefined) return 1;
  const end = to ?? from + 50;
  if (year <= from) return 1;
  return year >= end ? 0 : (end - year) / (end - from);
}

/** The looks of one cause, those of one group together; a look without a group stands by itself. */
export function inGroups(looks: readonly Look[]): Look[][] {
  if (looks.every((look) => look.sign.group === undefined)) return looks.map((look) => [look]);
  const groups = new Map<string, Look[]>();
  for (const look of looks) {
    const name = look.sign.group === undefined ? `look ${look.key}` : `group ${look.sign.group}`;
    groups.set(name, [...(groups.get(name) ?? []), look]);
  }
  return [...groups.values()];
}

/** How probable all these looks are, given each sign's share; those of one group go together. */
export function looksLikelihood(
  groups: readonly (readonly Look[])[],
  making: MakingFile,
  draw: Draw,
  share: (look: Look) => number,
): number {
  let product = 1;
  for (const group of groups) {
    const [only] = group;
    if (only !== undefined && group.length === 1) {
      product *= reportLikelihood(share(only), reportOf(only, making, draw));
      continue;
    }
    const reports = group.map((look) => reportOf(look, making, draw));
    product *= groupLikelihood(group.map(share), reports, draw(making.groupTogether));
  }
  return product;
}
