import { massesAtPart } from './atPart.ts';
import { sumsWith } from './classSums.ts';
import { columnClasses } from './columnClasses.ts';
import { type Evaluation, massesFor, restOf, restSumsOf } from './evaluation.ts';
import { type Factor, timesUnit } from './factor.ts';
import { fixModel, type Layout, type Unit } from './model.ts';
import type { Look } from './prepareCase.ts';
import { type Masses, massesFromSums } from './readingMasses.ts';
import { type Only, unitLines } from './unitLines.ts';

/** The masses with one unit's looks (or a restriction of it) put in the place of its own. */
export function massesWith(
  evaluation: Evaluation,
  unitIndex: number,
  looks: readonly Look[],
  only?: Only,
): Masses {
  const { classes, rest, lines } = unitWith(evaluation, unitIndex, looks, only);
  return massesFromSums(sumsWith(evaluation.model.layout, classes, rest, lines));
}

/** The whole product with one unit's looks put in the place of its own. */
export function wholeWith(evaluation: Evaluation, unitIndex: number, looks: readonly Look[]): Factor {
  const { model } = evaluation;
  const unit = model.layout.units[unitIndex] as Unit;
  const classes = columnClasses(model.layout, unit, looks);
  return timesUnit(
    model.layout,
    restOf(evaluation, unitIndex),
    classes,
    unitLines(model, unit, classes, looks),
  );
}

function unitWith(evaluation: Evaluation, unitIndex: number, looks: readonly Look[], only?: Only) {
  const { model } = evaluation;
  const unit = model.layout.units[unitIndex] as Unit;
  // Looks taken out leave classes finer than need be, which does no harm and keeps one sum of the rest in use.
  const classes = columnClasses(model.layout, unit, [...evaluation.looks, ...looks]);
  const rest = restSumsOf(evaluation, unitIndex, classes);
  return { classes, rest, lines: unitLines(model, unit, classes, looks, only) };
}

/** The unit a look is summed in, or −1 if it hangs on a make-up alteration and so stands in the prior. */
export function unitOfLook(layout: Layout, look: Pick<Look, 'part' | 'sign'>): number {
  const cause = look.sign.hangsOn;
  return cause.startsWith('alteration/')
    ? layout.units.findIndex((unit) => unit.alterations.some((each) => `alteration/${each.id}` === cause))
    : layout.units.findIndex((unit) => unit.parts.some((part) => part.id === look.part));
}

/**
 * The masses after a change of looks anywhere: by the changed part or unit alone where that suffices, else anew.
 *
 * @param alike  looks whose differences are told apart at once, for a run of such calls
 */
export function massesAfter(
  evaluation: Evaluation,
  look: Pick<Look, 'part' | 'sign'>,
  looks: readonly Look[],
  alike: readonly Look[] = [],
): Masses {
  if (!look.sign.hangsOn.startsWith('alteration/'))
    return massesAtPart(evaluation, look.part, looks, undefined, alike);
  const unit = unitOfLook(evaluation.model.layout, look);
  if (unit >= 0) return massesWith(evaluation, unit, looks);
  return massesFor(fixModel(evaluation.model.layout, evaluation.model.draw, looks), looks);
}
