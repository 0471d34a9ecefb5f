import type { Look } from '../evidence/preparedCase.ts';
import { timesWeights } from '../evidence/readingWeights.ts';
import { type ClassSums, classSums } from './classSums.ts';
import { type CliqueLines, cliqueLines } from './cliqueLines.ts';
import { cliqueShape } from './cliqueShape.ts';
import type { Evaluation } from './evaluation.ts';
import { copyOf, type Factor, multiplyClique, ones, priorFactor, times, timesClique } from './factor.ts';
import { cliqueRests, groupLines, type SummedClique } from './groupLines.ts';
import { groupOf } from './habitGroups.ts';
import { withIdle, withoutIdle } from './idleCliques.ts';
import type { Classes, CliqueShape, HabitGroup, Layout } from './layout.ts';
import { fixModel, type Model } from './model.ts';
import { type Posterior, posteriorOf } from './readingPosterior.ts';
import { readyClique } from './readyClique.ts';
import { toldFactor } from './toldFactor.ts';
import { onceIn, Worked } from './worked.ts';

/** Evaluates the model for the given looks: those of its case, or fewer, or others of the same signs. */
export function evaluate(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Evaluation {
  const { layout } = model;
  const summed = sumCliques(model, looks);
  const lines = layout.groups.map((group) => linesOf(model, group, summed));
  const product = withIdle(model, priorFactor(model));
  for (const each of factorsOf(layout, lines)) multiplyClique(layout, product, each.classes, each.lines);
  const whole = toldFactor(layout, product, model.told);
  const posterior = posteriorOf(layout, whole);
  return {
    model,
    looks,
    summed,
    lines,
    product,
    whole,
    posterior,
    worked: new Worked(),
  };
}

/** The posterior alone, for those who change nothing afterwards. */
export function posteriorFor(model: Model, looks: readonly Look[] = model.layout.prepared.looks): Posterior {
  const { layout } = model;
  const summed = sumCliques(model, looks);
  const whole = withIdle(model, priorFactor(model));
  const lines = layout.groups.map((group) => linesOf(model, group, summed));
  for (const each of factorsOf(layout, lines)) multiplyClique(layout, whole, each.classes, each.lines);
  return posteriorOf(layout, toldFactor(layout, whole, model.told));
}

/**
 * The product of the prior and all groups but one.
 *
 * @param strict  false leaves the stricter sums out
 */
export function restOf(evaluation: Evaluation, group: HabitGroup, strict = true): Factor {
  const { model, product } = evaluation;
  const clique = model.layout.cliques[group.cliques[0] ?? -1];
  if (clique === undefined) throw new RangeError('no such clique in this evaluation');
  if (!model.layout.groups.includes(group)) return withoutIdle(model, product, clique);
  const table = strict ? 'rest' : 'plainRest';
  const known = evaluation.worked.known(table, group);
  if (known !== undefined) return known;
  fillRests(evaluation, strict);
  return evaluation.worked.known(table, group) ?? restOf(evaluation, group);
}

/** All rests at once: what stands before a group times what stands behind it. */
function fillRests({ model, lines, worked }: Evaluation, strict: boolean): void {
  const { layout } = model;
  const start = withIdle(model, priorFactor(model));
  if (!strict) start.sums.length = 1;
  const factors = strict
    ? layout.groups.map((group, g) => ({ group, classes: group.classes, lines: lines[g] as CliqueLines }))
    : factorsOf(layout, lines);
  const prefixes: Factor[] = [start];
  for (const { classes, lines: each } of factors.slice(0, -1))
    prefixes.push(timesClique(layout, prefixes.at(-1) as Factor, classes, each));
  let suffix = ones(layout, strict);
  for (let g = factors.length - 1; g >= 0; g--) {
    const { group, classes, lines: each } = factors[g] as GroupFactor;
    const prefix = prefixes[g] as Factor;
    if (group !== undefined)
      worked.keep(
        strict ? 'rest' : 'plainRest',
        group,
        g === factors.length - 1 ? prefix : times(prefix, suffix),
      );
    if (g > 0) suffix = timesClique(layout, suffix, classes, each);
  }
}

/** What a group says; without `group`, what all alterations say together that change no part. */
type GroupFactor = { group: HabitGroup | undefined; classes: Classes; lines: CliqueLines };

/** Alterations that change no part tell apart the same scenarios: they are multiplied before the others and stand first. */
function factorsOf(layout: Layout, lines: readonly CliqueLines[]): GroupFactor[] {
  const others: GroupFactor[] = [];
  let partless: GroupFactor | undefined;
  layout.groups.forEach((group, g) => {
    const each = lines[g] as CliqueLines;
    const isPartless = group.cliques.every((u) => layout.cliques[u]?.parts.length === 0);
    if (!isPartless || (partless !== undefined && partless.classes !== group.classes))
      others.push({ group, classes: group.classes, lines: each });
    else if (partless === undefined)
      partless = {
        group: undefined,
        classes: group.classes,
        lines: { ...each, values: copyOf(each.values) },
      };
    else {
      const { values } = partless.lines;
      for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) * (each.values[i] as number);
      partless.lines.log += each.log;
    }
  });
  return partless === undefined ? others : [partless, ...others];
}

/**
 * All but one clique, summed over the classes of that clique, by its cutset states. True values are these times e^log.
 *
 * @param strict  false leaves the stricter sums out: the table is laid out as `plain` classes are
 */
export function restOfClique(evaluation: Evaluation, shape: CliqueShape, strict = true): ClassSums {
  const table = strict ? 'cliqueRest' : 'plainCliqueRest';
  const known = evaluation.worked.known(table, shape.cliqueIndex);
  if (known !== undefined) return known;
  const { model, summed } = evaluation;
  const group = groupOf(model.layout, shape.cliqueIndex);
  const rest = classSums(
    model.layout,
    restOf(evaluation, group, strict),
    strict ? group.classes : group.plain,
  );
  const cliques = group.cliques.map((u) => summed.get(u) ?? sumClique(model, u, evaluation.looks));
  const logs = cliques.reduce((sum, each) => sum + each.lines.log, 0);
  cliqueRests(model, group, rest.values, cliques, strict).forEach((values, at) => {
    const log = rest.log + logs - (cliques[at] as SummedClique).lines.log;
    evaluation.worked.keep(table, group.cliques[at] as number, { values, log });
  });
  return evaluation.worked.known(table, shape.cliqueIndex) as ClassSums;
}

/** The whole product with one clique's looks put in the place of its own. */
export function wholeWith(evaluation: Evaluation, cliqueIndex: number, looks: readonly Look[]): Factor {
  const { model } = evaluation;
  const { layout } = model;
  const group = groupOf(layout, cliqueIndex);
  const changed = new Map(evaluation.summed).set(cliqueIndex, sumClique(model, cliqueIndex, looks));
  const product = timesClique(
    layout,
    restOf(evaluation, group),
    group.classes,
    linesOf(model, group, changed),
  );
  return toldFactor(layout, product, model.told);
}

const nothingTold = timesWeights([]);

/** The same model with no looks at all: what is believed before the examination. */
export function bareEvaluation(evaluation: Evaluation): Evaluation {
  return evaluate(fixModel(evaluation.model.layout, evaluation.model.draw, [], nothingTold), []);
}

function sumCliques(model: Model, looks: readonly Look[]): Map<number, SummedClique> {
  return new Map(
    model.layout.groups.flatMap((group) =>
      group.cliques.map((u) => [u, sumClique(model, u, looks)] as [number, SummedClique]),
    ),
  );
}

function sumClique(model: Model, cliqueIndex: number, looks: readonly Look[]): SummedClique {
  const shape = cliqueShape(model.layout, cliqueIndex);
  const ready = readyClique(model, shape, looks);
  return { shape, ready, lines: onceIn(model.worked, 'lines', ready.name, () => cliqueLines(ready)) };
}

function linesOf(model: Model, group: HabitGroup, summed: ReadonlyMap<number, SummedClique>): CliqueLines {
  const cliques = group.cliques.map((u) => summed.get(u) as SummedClique);
  const name = cliques.map(({ ready }) => ready.name).join();
  return onceIn(model.worked, 'group', name, () => groupLines(model, group, cliques));
}
