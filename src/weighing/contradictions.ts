import { mostOfMeasured } from '../evidence/measuredLook.ts';
import { type Steps, stepByStep } from '../ground/steps.ts';
import { periodReadings, type ReadingId, readingWords } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { contradictionBelow } from './contradictionBelow.ts';
import { explanationsOf, shareIfOwn, shareUnlisted } from './explanations.ts';
import type { Weighing } from './weighing.ts';
import type { LookWeight } from './weights.ts';

/** An explanation must make a finding that does not fit at least so many times as probable. */
const eased = 3;

/** What is known of a part's standing: how probable it is that it is of the making. */
export type OwnShares = ReadonlyMap<string, number>;

/**
 * The findings that jar: those improbable under the leading reading, each with what would explain it; and, behind them,
 * those that would jar if a shop's file or a part's later origin, already weighed in, did not explain them.
 */
export function* contradictions(
  evaluation: Evaluation,
  weights: readonly LookWeight[],
  leading: ReadingId,
  own: OwnShares,
): Steps<Weighing['contradictions']> {
  const found = yield* stepByStep(weights, (weight) => {
    const share = weight.shareUnder[leading];
    const bare = share < contradictionBelow ? share : shareUnexplained(evaluation, weight, leading, own);
    if (bare >= contradictionBelow) return [];
    const explained = share >= contradictionBelow;
    const explanations = explanationsOf(evaluation, weight, bare, eased, explained);
    if (explained && explanations.length === 0) return [];
    const { look } = weight;
    return [
      {
        sign: look.sign.id,
        part: look.part === 'whole' ? null : look.part,
        state: look.state,
        share: bare,
        ...(look.measured === undefined ? {} : { measured: true }),
        question: question(evaluation, weight, leading, bare, explained),
        explained,
        explanations,
      },
    ];
  });
  return strongestPerPart(found.flat()).sort(
    (a, b) => Number(a.explained) - Number(b.explained) || a.share - b.share,
  );
}

/** The finding's share under the leading reading with no listed shop, or with its doubtful part of the making. */
function shareUnexplained(
  evaluation: Evaluation,
  weight: LookWeight,
  leading: ReadingId,
  own: OwnShares,
): number {
  const { look } = weight;
  let share = 1;
  if (look.sign.hangsOn === 'making' && periodReadings.includes(leading)) {
    share = Math.min(share, shareUnlisted(evaluation, weight, leading, contradictionBelow) ?? 1);
  }
  const part = evaluation.model.layout.prepared.parts.find((each) => each.id === look.part);
  // A cover or a caster that was renewed is no riddle; a rail is.
  if (part?.structural === true && (own.get(look.part) ?? 1) < 0.5)
    share = Math.min(share, shareIfOwn(evaluation, weight, leading) ?? 1);
  return share;
}

/** Of the findings that a part's later origin explains, only the most telling of each part; all others stay. */
function strongestPerPart(found: Weighing['contradictions']): Weighing['contradictions'] {
  return found.filter((each) => {
    const byShop = each.explanations[0]?.kind === 'shop';
    if (!each.explained || byShop) return true;
    const rivals = found.filter(
      (other) => other.explained && other.part === each.part && other.explanations[0]?.kind !== 'shop',
    );
    return rivals.every((other) => each.share <= other.share);
  });
}

function question(
  evaluation: Evaluation,
  weight: LookWeight,
  leading: ReadingId,
  share: number,
  explained: boolean,
): string {
  const { look } = weight;
  const part = evaluation.model.layout.prepared.parts.find((each) => each.id === look.part);
  const where = part === undefined || part.id === 'whole' ? 'on the piece as a whole' : `on the ${part.name}`;
  const seen = look.state === 'present' ? 'was seen' : 'was looked for and not seen';
  const reading = readingWords[leading].inSentence;
  const rate = share < 0.01 ? 'fewer than 1 in 100' : `about ${Math.round(share * 100)} in 100`;
  if (look.measured !== undefined) {
    const times = Math.round(mostOfMeasured / share);
    const measured = `What was measured for “${look.sign.name}” ${where} is about ${times} times less probable for ${reading} than where it fits best.`;
    return `${measured} ${explained ? 'Does what explains it here hold?' : 'What explains it?'}`;
  }
  const start = `“${look.sign.name}” ${seen} ${where}`;
  return explained
    ? `${start}: if it were ${reading}, and nothing else explained it, ${rate} would show this. Does what explains it here hold?`
    : `${start}: if it were ${reading}, and all else as found, ${rate} would show this. What explains it?`;
}
