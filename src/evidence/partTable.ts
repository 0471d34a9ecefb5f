import type { CauseShares, ThreeShares } from './causeShares.ts';
import type { Draw } from './figures.ts';
import { groupLikelihood, type Report } from './groupLikelihood.ts';
import type { Look, ModelPart, PreparedCase } from './prepareCase.ts';
import { inGroups, looksLikelihood, reportOf, shareByYear, shareIn } from './signShares.ts';
import { worlds } from './worlds.ts';

/**
 * A column of the model: a world, the shop (0 = unlisted) where it is period work, and the state of the piece's shared
 * habits (bit h: the maker's way shows the sign `habits[h]`).
 */
export type Column = { world: number; shop: number; habits: number };

/** What one redraw of the figures fixes, beside the parts. */
export type PartContext = {
  prepared: PreparedCase;
  draw: Draw;
  shares: CauseShares;
  columns: readonly Column[];
  /** Signs of the maker's habit that were looked for on several parts: their way is drawn once for the piece. */
  habits: readonly string[];
  old: Float64Array;
  /** By world: the bins in which it can have been made; all when left out. */
  worldBins?: readonly Bins[];
};

/** A run of bins. */
type Bins = { first: number; count: number };

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

/** Tabulates the looks of one part. `looks` holds only looks at this part that hang on it (not on an alteration). */
export function partTable(part: ModelPart, looks: readonly Look[], context: PartContext): PartTable {
  const { prepared, draw, shares } = context;
  const { making } = prepared.knowledge;
  const bins = prepared.axis.bins;
  const of = (cause: string) => looks.filter((look) => look.sign.hangsOn === cause);
  const [byOrigin, byHabit] = [inGroups(of('origin')), inGroups(of('making'))];
  const byYear = yearFactor([...of('part-year'), ...of('year')], context);
  const origin = (state: string) =>
    looksLikelihood(byOrigin, making, draw, (look) => shareIn(look.sign, state, draw));
  const habit = (state: string, standIn?: string) =>
    looksLikelihood(byHabit, making, draw, (look) => shareIn(look.sign, state, draw, standIn));
  const tool = stateLikelihoods(of('tooling'), ['hand', 'early-machine', 'modern-machine'], context);
  const aged = stateLikelihoods(of('ageing'), ['natural', 'none', 'imitated'], context);
  const used = stateLikelihoods(of('use'), ['natural', 'none', 'imitated'], context);

  const along = (scale: number, tooling: string, ageing: string, use: string, { first, count }: Bins) => {
    const line = new Float64Array(bins);
    const ways: [ThreeShares | undefined, number[]][] = [];
    if (tool !== undefined) ways.push([shares.tooling[tooling], tool]);
    if (aged !== undefined) ways.push([shares.ageing[ageing], aged]);
    if (used !== undefined) ways.push([shares.use[use], used]);
    for (let bin = first; bin < first + count; bin++) {
      let product = scale * (byYear === undefined ? 1 : (byYear[bin] ?? 1));
      for (const [states, likelihoods] of ways) product *= mix(states?.[bin], likelihoods);
      line[bin] = product;
    }
    return line;
  };

  const ownScale = origin('of-the-making');
  const ownLines = new Map<string, Float64Array>();
  const everyBin = { first: 0, count: bins };
  const own = worlds.map((world, w) => {
    // Worlds that differ in nothing these looks depend on share one line.
    const key = `${world.making} ${tool && world.tooling} ${aged && world.ageing} ${used && world.use}`;
    const line =
      ownLines.get(key) ??
      along(ownScale, world.tooling, world.ageing, world.use, context.worldBins?.[w] ?? everyBin);
    ownLines.set(key, line);
    return line;
  });
  const later = habit('later', 'bench-copy');
  const old = along(origin('other-old') * habit('period'), 'period', 'other-old', 'other-old', everyBin);
  return {
    own,
    ownMaking: habitByColumn(part, of('making'), context),
    repair: along(origin('repair') * later, 'later', 'repair', 'repair', everyBin),
    improve: along(origin('improve') * later, 'later', 'improve', 'improve', everyBin),
    old: old.reduce((sum, each, bin) => sum + each * (context.old[bin] ?? 0), 0),
  };
}

/** The maker's-habit factor by column: a shop's habit stands in the place of the general rate for period work. */
function habitByColumn(part: ModelPart, looks: readonly Look[], context: PartContext): Float64Array {
  const { prepared, draw, columns } = context;
  const { making } = prepared.knowledge;
  if (looks.length === 0) return new Float64Array(columns.length).fill(1);
  const ways = new Map(looks.map((look) => [look, habitWay(part, look, context)]));
  const groups = inGroups(looks).map((group) => group.map((look) => ways.get(look) as HabitWay));
  const together = groups.some((group) => group.length > 1) ? draw(making.groupTogether) : 0;
  return Float64Array.from(columns, (column) => {
    let product = 1;
    for (const group of groups) {
      const [only] = group;
      if (only !== undefined && group.length === 1) {
        const share = shareOfWay(only, column);
        product *= share * only.report.ifThere + (1 - share) * only.report.ifNot;
      } else
        product *= groupLikelihood(
          group.map((way) => shareOfWay(way, column)),
          group.map((way) => way.report),
          together,
        );
    }
    return product;
  });
}

/** One look at the maker's habit, its figures read: by world, and by shop where a shop's file holds the habit. */
type HabitWay = {
  report: Report;
  byWorld: readonly number[];
  /** By shop: its share where it has one for this kind of part, and whether its file leaves this kind out. */
  byShop: readonly (number | undefined)[];
  leftOut: readonly boolean[];
  /** Bit of the shared habit, or 0; and how far the maker keeps to it. */
  bit: number;
  together: number;
};

function habitWay(part: ModelPart, look: Look, { prepared, draw, habits }: PartContext): HabitWay {
  const { making } = prepared.knowledge;
  const own = prepared.shops.map((shop) => shop.habits.find((each) => each.sign === look.sign.id));
  const leftOut = own.map((way) => way?.on !== undefined && !way.on.includes(part.kind));
  const bit = bitOf(habits.indexOf(look.sign.id));
  return {
    report: reportOf(look, making, draw),
    byWorld: worlds.map((world) => shareIn(look.sign, world.making, draw)),
    byShop: own.map((way, s) => (way === undefined || leftOut[s] === true ? undefined : draw(way.shows))),
    leftOut,
    bit,
    together: bit === 0 ? 0 : draw(making.habitTogether),
  };
}

function shareOfWay({ byWorld, byShop, leftOut, bit, together }: HabitWay, column: Column): number {
  const share = byShop[column.shop - 1] ?? (byWorld[column.world] as number);
  // A habit that the shop keeps on other kinds of part only says nothing of this one.
  if (bit === 0 || leftOut[column.shop - 1] === true) return share;
  return (1 - together) * share + ((column.habits & bit) === 0 ? 0 : together);
}

function bitOf(index: number): number {
  return index < 0 ? 0 : 1 << index;
}

/** How probable a state of the shared habits is in a world and shop. */
export function habitStateShare(
  column: Column,
  context: Pick<PartContext, 'prepared' | 'draw' | 'habits'>,
): number {
  const { prepared, draw, habits } = context;
  const made = worlds[column.world]?.making ?? 'period';
  return habits.reduce((product, id, h) => {
    const sign = prepared.knowledge.signs[id];
    const ownWay = prepared.shops[column.shop - 1]?.habits.find((each) => each.sign === id);
    const share =
      ownWay === undefined ? (sign === undefined ? 0 : shareIn(sign, made, draw)) : draw(ownWay.shows);
    return product * (column.habits & bitOf(h) ? share : 1 - share);
  }, 1);
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

/** How probable the looks are in each state of their cause; undefined when there are none. */
function stateLikelihoods(
  looks: readonly Look[],
  states: readonly string[],
  context: PartContext,
): number[] | undefined {
  if (looks.length === 0) return undefined;
  const groups = inGroups(looks);
  const { prepared, draw } = context;
  return states.map((state) =>
    looksLikelihood(groups, prepared.knowledge.making, draw, (look) => shareIn(look.sign, state, draw)),
  );
}

function mix(states: Float64Array | undefined, likelihoods: readonly number[]): number {
  if (states === undefined)
    throw new RangeError('the making file lacks lines for a way of making, ageing or use');
  let sum = 0;
  for (let i = 0; i < likelihoods.length; i++) sum += (states[i] ?? 0) * (likelihoods[i] ?? 0);
  return sum;
}
