import { binsAfter, type Evaluation, unitOfLook } from './masses.ts';
import { massByBin } from './partPosterior.ts';
import type { Weighing } from './weighing.ts';
import type { LookWeight } from './weights.ts';

/** How far the end of the 90 % interval must move, in bins, for a finding to bind it. */
const movesBins = 1;

/** The findings that bind each end of the years: without them the interval would reach further out. */
export function bindingLooks(
  evaluation: Evaluation,
  weights: readonly LookWeight[],
): Weighing['years']['binding'] {
  const { model } = evaluation;
  const [first, last] = ends(massByBin(model, evaluation.whole));
  return weights.flatMap(({ look }) => {
    const unit = unitOfLook(model.layout, look);
    if (unit < 0) return [];
    const { bins } = binsAfter(
      evaluation,
      unit,
      evaluation.looks.filter((each) => each !== look),
    );
    const [from, to] = ends(bins);
    const ref = { sign: look.sign.id, part: look.part === 'whole' ? null : look.part };
    return [
      ...(from <= first - movesBins ? [{ ...ref, end: 'from' as const }] : []),
      ...(to >= last + movesBins ? [{ ...ref, end: 'to' as const }] : []),
    ];
  });
}

/** The bins below and above which a twentieth of the mass lies. */
function ends(mass: Float64Array): [number, number] {
  const total = mass.reduce((sum, each) => sum + each, 0);
  const below = (share: number) => {
    let held = 0;
    for (let bin = 0; bin < mass.length; bin++) {
      held += mass[bin] ?? 0;
      if (held >= share * total) return bin;
    }
    return mass.length - 1;
  };
  return [below(0.05), below(0.95)];
}
