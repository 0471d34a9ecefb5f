import { type Making, worlds } from '../evidence/worlds.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { evaluate } from './evaluate.ts';
import type { Evaluation } from './evaluation.ts';
import type { ScenarioCells } from './layout.ts';
import { alterationLikelihood, fixModel } from './model.ts';
import type { Sums } from './readingPosterior.ts';

/**
 * For a make-up alteration: the sums over the cutset states in which it did not happen and in which it did, what its own looks
 * say left out.
 */
export function cutsetStateSums(evaluation: Evaluation, alteration: Alteration): readonly [Sums, Sums] {
  const { model, looks } = evaluation;
  const { layout } = model;
  const seen = [false, true].map((happened) =>
    alterationLikelihood(alteration, happened, looks, layout.prepared, model.draw),
  );
  if (seen.every((each) => each > 0)) {
    const [not, happened] = seen.map((each, state) => sumOver(evaluation, alteration, state === 1, 1 / each));
    return [not as Sums, happened as Sums];
  }
  // A figure of nought cannot be divided out, so the sums are made anew without those looks.
  const others = looks.filter((look) => look.sign.hangsOn !== `alteration/${alteration.id}`);
  const bare = evaluate(fixModel(layout, model.draw, others), others);
  return [sumOver(bare, alteration, false, 1), sumOver(bare, alteration, true, 1)];
}

function sumOver({ model, whole }: Evaluation, alteration: Alteration, happened: boolean, by: number): Sums {
  const { layout } = model;
  const index = layout.makeUps.indexOf(alteration);
  const byMaking: Record<Making, number> = { period: 0, 'bench-copy': 0, 'machine-copy': 0, 'to-deceive': 0 };
  const strict: [number, number, number] = [0, 0, 0];
  layout.cutsetStates.forEach((cutsetState, m) => {
    if (cutsetState.happened[index] !== happened) return;
    layout.scenarios.forEach((scenario, c) => {
      const { offset, count } = layout.cells[c] as ScenarioCells;
      for (let k = 0; k < (c < layout.periodScenarios ? 4 : 1); k++) {
        const at = m * (k === 0 ? layout.cellCount : layout.periodCellCount) + offset;
        const sums = whole.sums[k] as Float64Array;
        let sum = 0;
        for (let i = at; i < at + count; i++) sum += (sums[i] as number) * by;
        if (k === 0) byMaking[worlds[scenario.world]?.making ?? 'period'] += sum;
        else strict[k - 1] = (strict[k - 1] as number) + sum;
      }
    });
  });
  return { byMaking, strict, log: whole.log };
}
