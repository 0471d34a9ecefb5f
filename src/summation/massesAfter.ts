import type { Look } from '../evidence/preparedCase.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { massesAtPart } from './atPart.ts';
import { configSums } from './configSums.ts';
import { massesFor } from './evaluate.ts';
import type { Evaluation } from './evaluation.ts';
import type { Layout } from './layout.ts';
import { alterationLikelihood, fixModel } from './model.ts';
import { messagesOf } from './partMessage.ts';
import { type Masses, massesFromSums, type Sums } from './readingMasses.ts';

/** The masses with an alteration held to have happened or not, its looks replaced by others. */
export function massesIf(
  evaluation: Evaluation,
  alteration: Alteration,
  happened: boolean,
  looks: readonly Look[],
): Masses {
  const { model } = evaluation;
  const seen = alterationLikelihood(alteration, happened, looks, model.layout.prepared, model.draw);
  const sums = splitBy(evaluation, alteration)[happened ? 1 : 0];
  return massesFromSums(mixed(sums, seen, sums, 0));
}

/** The unit a look is summed in, or −1 if it hangs on a make-up alteration and so stands in the prior. */
export function unitOfLook(layout: Layout, look: Pick<Look, 'part' | 'sign'>): number {
  const cause = look.sign.hangsOn;
  return cause.startsWith('alteration/')
    ? layout.units.findIndex((unit) => unit.alterations.some((each) => `alteration/${each.id}` === cause))
    : layout.units.findIndex((unit) => unit.parts.some((part) => part.id === look.part));
}

/** The masses after a change of looks at one part or one alteration. */
export function massesAfter(
  evaluation: Evaluation,
  look: Pick<Look, 'part' | 'sign'>,
  looks: readonly Look[],
): Masses {
  const { model } = evaluation;
  const cause = look.sign.hangsOn;
  if (!cause.startsWith('alteration/')) return massesAtPart(evaluation, look.part, looks);
  const alteration = model.layout.prepared.alterations.find((each) => `alteration/${each.id}` === cause);
  if (alteration === undefined) return massesFor(fixModel(model.layout, model.draw, looks), looks);
  const [not, happened] = splitBy(evaluation, alteration);
  const seen = (state: boolean) =>
    alterationLikelihood(alteration, state, looks, model.layout.prepared, model.draw);
  return massesFromSums(mixed(not, seen(false), happened, seen(true)));
}

/** The masses without some findings: exact, by the shortest way there is. */
export function massesWithout(evaluation: Evaluation, out: readonly Look[]): Masses {
  const looks = evaluation.looks.filter((each) => !out.includes(each));
  const [first] = out;
  if (first === undefined) return evaluation.masses;
  const cause = first.sign.hangsOn;
  const isOfAlteration = (look: Look) => look.sign.hangsOn.startsWith('alteration/');
  const together = isOfAlteration(first)
    ? out.every((look) => look.sign.hangsOn === cause)
    : out.every((look) => look.part === first.part && !isOfAlteration(look));
  if (together) return massesAfter(evaluation, first, looks);
  const { layout, draw } = evaluation.model;
  return massesFor(fixModel(layout, draw, looks), looks);
}

/** The sums if an alteration did not happen and if it did, what its own looks say left out; worked out once. */
export function splitBy(evaluation: Evaluation, alteration: Alteration): readonly [Sums, Sums] {
  const known = evaluation.worked.known('split', alteration.id);
  if (known !== undefined) return known;
  const unitIndex = evaluation.model.layout.units.findIndex((unit) => unit.alterations.includes(alteration));
  if (unitIndex < 0) evaluation.worked.keep('split', alteration.id, configSums(evaluation, alteration));
  else messagesOf(evaluation, unitIndex, true);
  return evaluation.worked.known('split', alteration.id) as readonly [Sums, Sums];
}

/** Two sums on one scale, each times a number, added. */
export function mixed(a: Sums, byA: number, b: Sums, byB: number): Sums {
  const mix = (x: number, y: number) => x * byA + y * byB;
  return {
    byMaking: {
      period: mix(a.byMaking.period, b.byMaking.period),
      'bench-copy': mix(a.byMaking['bench-copy'], b.byMaking['bench-copy']),
      'machine-copy': mix(a.byMaking['machine-copy'], b.byMaking['machine-copy']),
      'to-deceive': mix(a.byMaking['to-deceive'], b.byMaking['to-deceive']),
    },
    strict: [mix(a.strict[0], b.strict[0]), mix(a.strict[1], b.strict[1]), mix(a.strict[2], b.strict[2])],
    log: a.log,
  };
}
