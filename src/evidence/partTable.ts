import type { ThreeShares } from './causeShares.ts';
import { groupLikelihood } from './groupLikelihood.ts';
import type { Bins } from './layout.ts';
import type { PartContext } from './partContext.ts';
import { partHabits } from './partHabits.ts';
import type { Look, ModelPart } from './prepareCase.ts';
import { inGroups, looksLikelihood, reportOf, shareByYear, shareIn } from './signShares.ts';
import { type World, worlds } from './worlds.ts';

/**
 * How probable the looks at one part are, for every way the part can have come about.
 *
 * `own[world]` by bin of the making; times `ownMaking[i]`, for the i-th column asked for, for what hangs on the maker's
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

/** What of a part's table does not hang on the maker's habit. */
export type PartBase = Omit<PartTable, 'ownMaking'>;

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

/** Tabulates looks that hang on anything but the maker's habit. */
export function partBase(looks: readonly Look[], context: PartContext): PartBase {
  const { prepared, draw, shares } = context;
  const { making } = prepared.knowledge;
  const bins = prepared.axis.bins;
  const of = (cause: string) => looks.filter((look) => look.sign.hangsOn === cause);
  const byOrigin = inGroups(of('origin'));
  const byYear = yearFactor(
    looks.filter(({ sign }) => sign.hangsOn === 'part-year' || sign.hangsOn === 'year'),
    context,
  );
  const origin = (state: string) =>
    byOrigin.length === 0
      ? 1
      : looksLikelihood(byOrigin, making, draw, (look) => shareIn(look.sign, state, draw));
  const tool = causeLines(
    of('tooling'),
    ['hand', 'early-machine', 'modern-machine'],
    shares.tooling,
    context,
  );
  const aged = causeLines(of('ageing'), ['natural', 'none', 'imitated'], shares.ageing, context);
  const used = causeLines(of('use'), ['natural', 'none', 'imitated'], shares.use, context);

  const along = (scale: number, world: Pick<World, 'tooling' | 'ageing' | 'use'>, { first, count }: Bins) => {
    const line = new Float64Array(bins);
    const end = first + count;
    if (byYear === undefined) line.fill(scale, first, end);
    else for (let bin = first; bin < end; bin++) line[bin] = scale * (byYear[bin] as number);
    for (const by of [tool?.(world.tooling), aged?.(world.ageing), used?.(world.use)])
      if (by !== undefined)
        for (let bin = first; bin < end; bin++) line[bin] = (line[bin] as number) * (by[bin] as number);
    return line;
  };

  const ownScale = origin('of-the-making');
  const ownLines = new Map<string, Float64Array>();
  const everyBin = { first: 0, count: bins };
  const own = worlds.map((world, w) => {
    // Worlds that differ in nothing these looks depend on share one line.
    const key = `${world.making} ${tool && world.tooling} ${aged && world.ageing} ${used && world.use}`;
    const line = ownLines.get(key) ?? along(ownScale, world, context.worldBins?.[w] ?? everyBin);
    ownLines.set(key, line);
    return line;
  });
  const later = (to: 'repair' | 'improve') =>
    along(origin(to), { tooling: 'later', ageing: to, use: to }, everyBin);
  const reused = along(
    origin('other-old'),
    { tooling: 'period', ageing: 'other-old', use: 'other-old' },
    everyBin,
  );
  let old = 0;
  for (let bin = 0; bin < bins; bin++) old += (reused[bin] as number) * (context.old[bin] as number);
  return { own, repair: later('repair'), improve: later('improve'), old };
}

/** For looks that hang on one cause: how probable they are by bin, for each way its states are shared out. */
function causeLines(
  looks: readonly Look[],
  states: readonly string[],
  shares: Record<string, ThreeShares>,
  context: PartContext,
): ((way: string) => Float64Array) | undefined {
  if (looks.length === 0) return undefined;
  const groups = inGroups(looks);
  const { prepared, draw } = context;
  const [a = 0, b = 0, c = 0] = states.map((state) =>
    looksLikelihood(groups, prepared.knowledge.making, draw, (look) => shareIn(look.sign, state, draw)),
  );
  const known = new Map<string, Float64Array>();
  return (way) => {
    const before = known.get(way);
    if (before !== undefined) return before;
    const three = shares[way];
    if (three === undefined)
      throw new RangeError(`the making file lacks lines for a way of making, ageing or use: ${way}`);
    const [x, y, z] = three;
    const line = new Float64Array(x.length);
    for (let bin = 0; bin < line.length; bin++)
      line[bin] = (x[bin] as number) * a + (y[bin] as number) * b + (z[bin] as number) * c;
    known.set(way, line);
    return line;
  };
}

/** For looks that hang on a year: how probable they are by bin; undefined when there are none. */
function yearFactor(looks: readonly Look[], context: PartContext): Float64Array | undefined {
  if (looks.length === 0) return undefined;
  const { prepared, draw } = context;
  const { making } = prepared.knowledge;
  const factor = new Float64Array(prepared.axis.bins).fill(1);
  for (const group of inGroups(looks)) {
    const reports = group.map((look) => reportOf(look, making, draw));
    const lines = group.map((look) => shareByYear(look.sign, prepared.axis, draw));
    const [only, report] = [lines[0], reports[0]];
    if (only !== undefined && report !== undefined && lines.length === 1) {
      const { ifThere, ifNot } = report;
      for (let bin = 0; bin < factor.length; bin++)
        factor[bin] = (factor[bin] as number) * (ifNot + (only[bin] as number) * (ifThere - ifNot));
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
