import { nowBin } from '../evidence/preparedCase.ts';
import type { ReadingWeights } from '../evidence/readingWeights.ts';
import { worlds } from '../evidence/worlds.ts';
import {
  alterationOf,
  type ChangeOutcomes,
  cliqueMessage,
  type GivePart,
  othersLine,
  outcomeCount,
  outcomeOf,
  plainOutcomeCount,
  type Splits,
} from './cliqueMessage.ts';
import { cliqueShape } from './cliqueShape.ts';
import { restOfClique } from './evaluate.ts';
import type { Evaluation } from './evaluation.ts';
import type { Clique, HabitClasses } from './layout.ts';
import { linesTogether, noughts, withRoom } from './memory.ts';
import type { LaterWay, MessageRow, OldWay, PartMessage } from './message.ts';
import type { Model } from './model.ts';
import { renewedByBin, reusedIn } from './ordinaryTerms.ts';
import type { Sums } from './readingPosterior.ts';
import { type ReadyClique, readyClique } from './readyClique.ts';
import { toldSums } from './toldFactor.ts';

/**
 * The message to a part; those to all parts of its clique are worked out together, once.
 *
 * @param strict  false where the stricter levels are not asked for: a message that has them will do as well
 */
export function messageTo(evaluation: Evaluation, partId: string, strict = true): PartMessage {
  const { worked } = evaluation;
  const known =
    worked.known('message', partId) ?? (strict ? undefined : worked.known('plainMessage', partId));
  if (known !== undefined) return known;
  const cliqueIndex = evaluation.model.layout.cliques.findIndex((clique) =>
    clique.parts.some((part) => part.id === partId),
  );
  if (cliqueIndex < 0) throw new RangeError(`no part ${partId} in this evaluation`);
  messagesOf(evaluation, cliqueIndex, strict, partId);
  return worked.known(strict ? 'message' : 'plainMessage', partId) as PartMessage;
}

/** Works out the messages to all parts of a clique, and the posterior with and without each of its alterations. */
export function messagesOf(
  evaluation: Evaluation,
  cliqueIndex: number,
  strict: boolean,
  partId?: string,
): void {
  const { model, looks } = evaluation;
  const shape = cliqueShape(model.layout, cliqueIndex, partId);
  const ready = readyClique(model, shape, looks);
  const rest = restOfClique(evaluation, shape, strict);
  const messages = ready.parts.map(
    ({ part, table, log }, p): PartMessage => ({
      part,
      table,
      habitClasses: shape.habitClasses[p] as HabitClasses,
      rows: [],
      later: [],
      old: [],
      log: rest.log + ready.log - log,
    }),
  );
  const gather = messages.map((message, _p) => gathering(model, message, shape.cutsetStates, strict));
  const give: GivePart = (p, at, lines, habitClasses) => gather[p]?.(p, at, lines, habitClasses);
  const { changes, splits } = withRoom((lend) => cliqueMessage(ready, rest.values, give, strict, lend));
  messages.forEach((message, p) => {
    addChanges(message, ready, changes, p);
    for (const way of message.later) putByYear(model, way, strict);
    evaluation.worked.keep(strict ? 'message' : 'plainMessage', message.part.id, message);
  });
  if (!strict) return;
  const log = rest.log + ready.log;
  shape.clique.alterations.forEach((each, a) => {
    const [not, happened] = splits[a] as Splits[number];
    evaluation.worked.keep('split', each.id, [
      sumsOfOutcomes(not, log, model.told),
      sumsOfOutcomes(happened, log, model.told),
    ]);
  });
}

/** Sums by outcome as sums by making and level, what was seen of the piece as a whole put in. */
export function sumsOfOutcomes(outcomes: Float64Array, log: number, told: ReadingWeights | undefined): Sums {
  const [period = 0, bench = 0, machine = 0, deceive = 0, notMadeUp = 0, notAltered = 0, intact = 0] =
    outcomes;
  return toldSums(
    {
      byMaking: { period, 'bench-copy': bench, 'machine-copy': machine, 'to-deceive': deceive },
      strict: [notMadeUp, notAltered, intact],
      log,
    },
    told,
  );
}

function lines(model: Model, strict: boolean): Float64Array[] {
  const { bins } = model.layout.prepared.axis;
  return linesTogether(strict ? outcomeCount : plainOutcomeCount, bins);
}

/** Takes up what meets the part's factor and shares it out over the ways the part can have come unless altered. */
function gathering(
  model: Model,
  message: PartMessage,
  cutsetStates: readonly number[],
  strict: boolean,
): GivePart {
  const { layout } = model;
  const { part } = message;
  const rows: Map<string, MessageRow> = new Map();
  const renewed = renewedByBin(model, part);
  const reusedBy = worlds.map((_, world) => reusedIn(model, part, world));
  const renewedWay: LaterWay = {
    source: 'renewed',
    to: 'repair',
    earliest: 0,
    byYear: [],
    byMaking: [{ outcomes: lines(model, strict), others: undefined }],
  };
  const reusedWay: OldWay = { source: 'reused', outcomes: lines(model, strict) };
  message.later.push(renewedWay);
  message.old.push(reusedWay);
  const brought = layout.makeUps.map((each) => {
    const to = each.changes[part.kind]?.to;
    if (to === undefined) return undefined;
    const outcomes = lines(model, strict);
    if (to === 'other-old') message.old.push({ source: each.id, outcomes });
    else
      message.later.push({
        source: each.id,
        to,
        earliest: 0,
        byYear: [],
        byMaking: [{ outcomes, others: undefined }],
      });
    return { share: layout.changeShares[each.id]?.[part.kind] ?? 0, outcomes };
  });
  const sum = new Float64Array(model.layout.prepared.axis.bins);
  return (_, { world, cutsetState, k }, lines, habitClasses) => {
    const { first, count } = layout.worldBins[world] ?? { first: 0, count: 0 };
    const outcome = outcomeOf(world, k, strict);
    const reused = reusedBy[world] as number;
    let left = 1;
    for (let a = 0; a < brought.length; a++)
      if (
        brought[a] !== undefined &&
        layout.cutsetStates[cutsetStates[cutsetState] ?? 0]?.happened[a] === true
      )
        left *= 1 - (brought[a]?.share ?? 0);
    const kept = left * (1 - reused);
    sum.fill(0, 0, count);
    for (const habitClass of habitClasses) {
      const from = habitClass * count;
      const own = strict
        ? rowOf(message, rows, { world, habitClass }, worlds[world]?.making === 'period' ? 4 : 1, count).lines
        : rowOf(message, rows, { world, habitClass: -1 }, 1, count).lines;
      const by = kept * (strict ? 1 : (message.table.ownMaking[habitClass] as number));
      for (let i = 0; i < count; i++) {
        const each = lines[from + i] as number;
        sum[i] = (sum[i] as number) + each;
        own[k * count + i] =
          (own[k * count + i] as number) + by * (1 - (renewed[first + i] as number)) * each;
      }
    }
    left = 1;
    for (let a = brought.length - 1; a >= 0; a--) {
      const each = brought[a];
      if (each === undefined || layout.cutsetStates[cutsetStates[cutsetState] ?? 0]?.happened[a] !== true)
        continue;
      addScaled(each.outcomes[outcome] as Float64Array, first, sum, left * each.share, count);
      left *= 1 - each.share;
    }
    if (k === 3 && part.structural) return;
    const later = renewedWay.byMaking[0]?.outcomes[outcome] as Float64Array;
    for (let i = 0; i < count; i++)
      later[first + i] =
        (later[first + i] as number) + kept * (renewed[first + i] as number) * (sum[i] as number);
    addScaled(reusedWay.outcomes[outcome] as Float64Array, first, sum, left * reused, count);
  };
}

/** The row of a world and habit class, made when it is first asked for. */
function rowOf(
  message: PartMessage,
  rows: Map<string, MessageRow>,
  at: Omit<MessageRow, 'lines'>,
  levels: number,
  count: number,
): MessageRow {
  const key = `${at.world} ${at.habitClass}`;
  const known = rows.get(key);
  if (known !== undefined) return known;
  const made = { ...at, lines: noughts(levels * count) };
  rows.set(key, made);
  message.rows.push(made);
  return made;
}

function addScaled(into: Float64Array, first: number, line: Float64Array, by: number, count: number): void {
  for (let i = 0; i < count; i++) into[first + i] = (into[first + i] as number) + by * (line[i] as number);
}

/** Adds the ways the part can have been changed by the clique's alterations. */
function addChanges(
  message: PartMessage,
  ready: ReadyClique,
  changes: readonly ChangeOutcomes[],
  p: number,
): void {
  const { alterations }: Clique = ready.shape.clique;
  alterations.forEach((each, a) => {
    const to = each.changes[message.part.kind]?.to;
    if (to === undefined || to === 'other-old') return;
    const mine = changes.filter((change) => change.alteration === a && (change.changed & (1 << p)) !== 0);
    message.later.push({
      source: alterationOf(ready, { alteration: a, changed: 0, outcomes: [] }).id,
      to,
      earliest: ready.changes.earliest[a] as number,
      byYear: [],
      byMaking: mine.map((change) => ({ outcomes: change.outcomes, others: othersLine(ready, change, p) })),
    });
  });
}

/** Puts a later way together over the part's own year: every year from the making on is alike, so sums run along. */
function putByYear(model: Model, way: LaterWay, strict: boolean): void {
  const now = nowBin(model.layout.prepared);
  way.byYear = lines(model, strict);
  for (const { outcomes, others } of way.byMaking) {
    outcomes.forEach((outcome, s) => {
      const into = way.byYear[s] as Float64Array;
      let before = 0;
      for (let bin = 0; bin <= now; bin++) {
        before += (outcome[bin] as number) / (now - Math.max(bin, Math.min(way.earliest, now)) + 1);
        if (bin >= way.earliest && before !== 0)
          into[bin] = (into[bin] as number) + before * (others === undefined ? 1 : (others[bin] as number));
      }
    });
  }
}
