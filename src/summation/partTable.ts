import { campaignByBin, campaignOf } from '../evidence/campaigns.ts';
import type { ThreeShares } from '../evidence/causeShares.ts';
import type { Draw } from '../evidence/figures.ts';
import { groupLikelihood, reportLikelihood } from '../evidence/groupLikelihood.ts';
import type { Look, ModelPart } from '../evidence/preparedCase.ts';
import { inGroups, looksLikelihood, reportOf, shareByYear, shareIn } from '../evidence/signShares.ts';
import { type World, worlds, worldsAlike } from '../evidence/worlds.ts';
import type { Bins } from './layout.ts';
import { noughts } from './memory.ts';
import type { PartContext } from './partContext.ts';
import { partHabits } from './partHabits.ts';

/**
 * How probable the looks at one part are, for every way the part can have come about.
 *
 * `own[world]` by bin of the making; times `ownMaking[i]`, for the i-th scenario asked for, for what hangs on the maker's
 * habit; `repair` and
 * `improve` by bin of the part's own year; `old` for a part from another old piece, its years summed out.
 */
export type PartTable = {
  own: Float64Array[];
  ownMaking: Float64Array;
  repair: Float64Array;
  improve: Float64Array;
  old: number;
};

/** What of a part's table does not hang on the maker's habit; `oldLine` is `old` by bin of the part's own year. */
export type PartBase = Omit<PartTable, 'ownMaking'> & { oldLine: Float64Array };

/** One state of a cause held fast: the looks that hang on the cause speak only of it. */
export type Held = { cause: 'origin' | 'tooling' | 'ageing' | 'use'; state: string };

/** The states of the causes of a part. */
export const causeStates = {
  origin: ['of-the-making', 'repair', 'improve', 'other-old'],
  tooling: ['hand', 'early-machine', 'modern-machine'],
  ageing: ['natural', 'none', 'imitated'],
  use: ['natural', 'none', 'imitated'],
} as const satisfies Record<Held['cause'], readonly string[]>;

/** Tabulates the looks of one part. `looks` holds only looks at this part that hang on it (not on an alteration). */
export function partTable(part: ModelPart, looks: readonly Look[], context: PartContext): PartTable {
  const { own, repair, improve, old } = partBase(
    looks.filter((look) => look.sign.hangsOn !== 'making'),
    context,
  );
  const habits = partHabits(
    part,
    looks.filter((look) => look.sign.hangsOn === 'making'),
    context,
  );
  if (habits.later !== 1)
    for (let bin = 0; bin < repair.length; bin++) {
      repair[bin] = (repair[bin] as number) * habits.later;
      improve[bin] = (improve[bin] as number) * habits.later;
    }
  return { own, ownMaking: habits.own, repair, improve, old: old * habits.old };
}

/**
 * Tabulates looks that hang on anything but the maker's habit.
 *
 * @param held  a state of a cause: only what goes with it is counted
 */
export function partBase(looks: readonly Look[], context: PartContext, held?: Held): PartBase {
  const { prepared, shares, worldBins, old: oldYears } = context;
  const { bins } = prepared.axis;
  const along = (
    { byYear, tool, aged, used }: Said,
    scale: number,
    way: Pick<World, 'tooling' | 'ageing' | 'use'>,
    run: Bins | undefined,
  ) => {
    const line = noughts(bins);
    const first = run?.first ?? 0;
    const end = run === undefined ? bins : first + run.count;
    if (byYear === undefined) line.fill(scale, first, end);
    else for (let bin = first; bin < end; bin++) line[bin] = scale * (byYear[bin] as number);
    if (tool !== undefined) timesShares(line, waysOf(shares.tooling, way.tooling), tool, first, end);
    if (aged !== undefined) timesShares(line, waysOf(shares.ageing, way.ageing), aged, first, end);
    if (used !== undefined) timesShares(line, waysOf(shares.use, way.use), used, first, end);
    return line;
  };
  const plain = saidAfter(looks, context, held, noCampaign);
  const ownAfter = (after: ReadonlySet<string>) => {
    const said = after.size === 0 ? plain : saidAfter(looks, context, held, after);
    const { tool, aged, used } = said;
    const alike =
      worldsAlike[
        Number(tool !== undefined) + 2 * Number(aged !== undefined) + 4 * Number(used !== undefined)
      ];
    const lines: Float64Array[] = [];
    worlds.forEach((world, w) => {
      const first = alike?.[w] ?? w;
      lines.push(
        first < w ? (lines[first] as Float64Array) : along(said, said.origin[0] ?? 1, world, worldBins?.[w]),
      );
    });
    return lines;
  };
  const own = afterCampaigns(looks, context, ownAfter);
  const [, repair = 1, improve = 1, otherOld = 1] = plain.origin;
  const later = (scale: number, to: 'repair' | 'improve') =>
    along(plain, scale, { tooling: 'later', ageing: to, use: to }, undefined);
  const oldLine = along(
    plain,
    otherOld,
    { tooling: 'period', ageing: 'other-old', use: 'other-old' },
    undefined,
  );
  let old = 0;
  for (let bin = 0; bin < bins; bin++) {
    const share = (oldLine[bin] as number) * (oldYears[bin] as number);
    oldLine[bin] = share;
    old += share;
  }
  return { own, repair: later(repair, 'repair'), improve: later(improve, 'improve'), old, oldLine };
}

const noCampaign: ReadonlySet<string> = new Set();

/** What the looks say of each cause; undefined where they say nothing. */
type Said = {
  byYear: Float64Array | undefined;
  origin: readonly number[];
  tool: number[] | undefined;
  aged: number[] | undefined;
  used: number[] | undefined;
};

/** What the looks say of a part that has been through some campaigns: their traces show on it besides what it shows of itself. */
function saidAfter(
  looks: readonly Look[],
  context: PartContext,
  held: Held | undefined,
  after: ReadonlySet<string>,
): Said {
  const of = (cause: Held['cause']) => stateLikelihoods(cause, looks, context, held, after);
  return {
    byYear: yearFactor(
      looks.filter(({ sign }) => sign.hangsOn === 'part-year' || sign.hangsOn === 'year'),
      context,
      after,
    ),
    origin: of('origin') ?? [1, 1, 1, 1],
    tool: of('tooling'),
    aged: of('ageing'),
    used: of('use'),
  };
}

/** The lines of a part of the making, its campaigns summed out by how probable each is for the year of the making. */
function afterCampaigns(
  looks: readonly Look[],
  { prepared, draw }: PartContext,
  ownAfter: (after: ReadonlySet<string>) => Float64Array[],
): Float64Array[] {
  const summed = (after: readonly string[], [kind, ...rest]: readonly string[]): Float64Array[] => {
    if (kind === undefined) return ownAfter(new Set(after));
    const [not, happened] = [summed(after, rest), summed([...after, kind], rest)];
    const share = campaignByBin(prepared, draw, kind);
    return not.map((line, w) =>
      line.map((each, bin) => {
        const p = share[bin] as number;
        return (1 - p) * each + p * (happened[w]?.[bin] as number);
      }),
    );
  };
  return summed([], [...new Set(looks.flatMap((look) => campaignOf(look) ?? []))]);
}

/** Of such parts the share that shows a sign, where the part has been through the campaign that leaves it. */
function withCampaign(share: number, look: Look, draw: Draw, after: ReadonlySet<string>): number {
  const { campaign } = look.sign;
  if (campaign === undefined || !after.has(campaign.kind)) return share;
  return share + (1 - share) * draw(campaign.shows);
}

/** How probable the looks that hang on a cause are in each of its states; undefined where it makes no odds. */
function stateLikelihoods(
  cause: Held['cause'],
  looks: readonly Look[],
  { prepared, draw }: PartContext,
  held: Held | undefined,
  after: ReadonlySet<string>,
): number[] | undefined {
  const mine = looks.filter(({ sign }) => sign.hangsOn === cause);
  const fast = held?.cause === cause ? held.state : undefined;
  if (mine.length === 0 && fast === undefined) return undefined;
  const groups = inGroups(mine);
  return causeStates[cause].map((state) =>
    fast !== undefined && fast !== state
      ? 0
      : looksLikelihood(groups, prepared.knowledge.making, draw, (look) =>
          withCampaign(shareIn(look.sign, state, draw), look, draw, after),
        ),
  );
}

function waysOf(shares: Record<string, ThreeShares>, way: string): ThreeShares {
  const three = shares[way];
  if (three === undefined)
    throw new RangeError(`the making file lacks lines for a way of making, aging or use: ${way}`);
  return three;
}

/** Multiplies a line by how probable looks are, their cause's states shared out as they are by year. */
function timesShares(
  line: Float64Array,
  [x, y, z]: ThreeShares,
  likelihoods: readonly number[],
  first: number,
  end: number,
): void {
  const [a = 0, b = 0, c = 0] = likelihoods;
  for (let bin = first; bin < end; bin++)
    line[bin] =
      (line[bin] as number) * ((x[bin] as number) * a + (y[bin] as number) * b + (z[bin] as number) * c);
}

/** For looks that hang on a year: how probable they are by bin; undefined when there are none. */
function yearFactor(
  looks: readonly Look[],
  context: PartContext,
  after: ReadonlySet<string>,
): Float64Array | undefined {
  if (looks.length === 0) return undefined;
  const { prepared, draw } = context;
  const { making } = prepared.knowledge;
  const factor = noughts(prepared.axis.bins).fill(1);
  for (const group of inGroups(looks)) {
    const reports = group.map((look) => reportOf(look, making, draw));
    const lines = group.map((look) => {
      const line = shareByYear(look.sign, prepared.axis, draw);
      return after.size === 0 ? line : line.map((share) => withCampaign(share, look, draw, after));
    });
    const [only, report] = [lines[0], reports[0]];
    if (only !== undefined && report !== undefined && lines.length === 1) {
      for (let bin = 0; bin < factor.length; bin++)
        factor[bin] = (factor[bin] as number) * reportLikelihood(only[bin] as number, report);
      continue;
    }
    const together = draw(making.groupTogether);
    for (let bin = 0; bin < factor.length; bin++) {
      factor[bin] =
        (factor[bin] ?? 1) *
        groupLikelihood(
          lines.map((line) => line[bin] ?? 0),
          reports,
          together,
        );
    }
  }
  return factor;
}
