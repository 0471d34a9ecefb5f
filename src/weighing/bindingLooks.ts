import { sum } from '../ground/statistics.ts';
import { type Steps, stepByStep } from '../ground/steps.ts';
import { binsAtPart } from '../summation/atPart.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { massByBin } from './partPosterior.ts';
import type { Weighing } from './weighing.ts';
import type { LookWeight } from './weights.ts';

/** How many findings are told of for each end. */
const toldPerEnd = 3;

/** The findings that bind each end of the years most: without them the interval would reach further out. */
export function* bindingLooks(
  evaluation: Evaluation,
  weights: readonly LookWeight[],
): Steps<Weighing['years']['binding']> {
  const { model } = evaluation;
  const [first, last] = ends(massByBin(model, evaluation.whole));
  const found = yield* stepByStep(weights, ({ look }) => {
    // A trace of an alteration moves no year: to spare time.
    if (look.sign.hangsOn.startsWith('alteration/')) return [];
    const others = evaluation.looks.filter((each) => each !== look);
    const [from, to] = ends(binsAtPart(evaluation, look.part, others));
    const ref = { sign: look.sign.id, part: look.part === 'whole' ? null : look.part };
    return [
      { ...ref, end: 'from' as const, by: first - from },
      { ...ref, end: 'to' as const, by: to - last },
    ];
  });
  const moves = found.flat();
  return (['from', 'to'] as const).flatMap((end) =>
    moves
      .filter((move) => move.end === end && move.by >= 1)
      .sort((a, b) => b.by - a.by)
      .slice(0, toldPerEnd)
      .map(({ sign, part }) => ({ sign, part, end })),
  );
}

/** The bins below and above which a twentieth of the mass lies. */
function ends(mass: Float64Array): [number, number] {
  const total = sum(mass);
  const below = (share: number) => {
    let held = 0;
    return mass.findIndex((each) => {
      held += each;
      return held >= share * total;
    });
  };
  return [below(0.05), below(0.95)];
}
