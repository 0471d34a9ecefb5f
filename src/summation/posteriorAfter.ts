import type { Look } from '../evidence/preparedCase.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { posteriorAtPart } from './atPart.ts';
import { cutsetStateSums } from './cutsetSums.ts';
import { posteriorFor } from './evaluate.ts';
import type { Evaluation } from './evaluation.ts';
import type { Layout } from './layout.ts';
import { alterationLikelihood, fixModel } from './model.ts';
import { messagesOf } from './partMessage.ts';
import { type Posterior, posteriorFromSums, type Sums } from './readingPosterior.ts';

/** The posterior with an alteration held to have happened or not, its looks replaced by others. */
export function posteriorIf(
  evaluation: Evaluation,
  alteration: Alteration,
  happened: boolean,
  looks: readonly Look[],
): Posterior {
  const { model } = evaluation;
  const seen = alterationLikelihood(alteration, happened, looks, model.layout.prepared, model.draw);
  const sums = splitBy(evaluation, alteration)[happened ? 1 : 0];
  return posteriorFromSums(mixed(sums, seen, sums, 0));
}

/** The clique a look is summed in, or −1 if it hangs on a make-up alteration and so stands in the prior. */
export function cliqueOfLook(layout: Layout, look: Pick<Look, 'part' | 'sign'>): number {
  const cause = look.sign.hangsOn;
  return cause.startsWith('alteration/')
    ? layout.cliques.findIndex((clique) =>
        clique.alterations.some((each) => `alteration/${each.id}` === cause),
      )
    : layout.cliques.findIndex((clique) => clique.parts.some((part) => part.id === look.part));
}

/** The posterior after a change of looks at one part or one alteration. */
export function posteriorAfter(
  evaluation: Evaluation,
  look: Pick<Look, 'part' | 'sign'>,
  looks: readonly Look[],
): Posterior {
  const { model } = evaluation;
  const cause = look.sign.hangsOn;
  if (!cause.startsWith('alteration/')) return posteriorAtPart(evaluation, look.part, looks);
  const alteration = model.layout.prepared.alterations.find((each) => `alteration/${each.id}` === cause);
  if (alteration === undefined) return posteriorFor(fixModel(model.layout, model.draw, looks), looks);
  const [not, happened] = splitBy(evaluation, alteration);
  const seen = (state: boolean) =>
    alterationLikelihood(alteration, state, looks, model.layout.prepared, model.draw);
  return posteriorFromSums(mixed(not, seen(false), happened, seen(true)));
}

/** The posterior without some findings: exact, by the shortest way there is. */
export function posteriorWithout(evaluation: Evaluation, out: readonly Look[]): Posterior {
  const looks = evaluation.looks.filter((each) => !out.includes(each));
  const [first] = out;
  if (first === undefined) return evaluation.posterior;
  const cause = first.sign.hangsOn;
  const isOfAlteration = (look: Look) => look.sign.hangsOn.startsWith('alteration/');
  const together = isOfAlteration(first)
    ? out.every((look) => look.sign.hangsOn === cause)
    : out.every((look) => look.part === first.part && !isOfAlteration(look));
  if (together) return posteriorAfter(evaluation, first, looks);
  const { layout, draw } = evaluation.model;
  return posteriorFor(fixModel(layout, draw, looks), looks);
}

/** The sums if an alteration did not happen and if it did, what its own looks say left out; worked out once. */
export function splitBy(evaluation: Evaluation, alteration: Alteration): readonly [Sums, Sums] {
  const known = evaluation.worked.known('split', alteration.id);
  if (known !== undefined) return known;
  const cliqueIndex = evaluation.model.layout.cliques.findIndex((clique) =>
    clique.alterations.includes(alteration),
  );
  if (cliqueIndex < 0)
    evaluation.worked.keep('split', alteration.id, cutsetStateSums(evaluation, alteration));
  else messagesOf(evaluation, cliqueIndex, true);
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
