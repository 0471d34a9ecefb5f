import { binsAtPart, changeYearsAtPart } from './atPart.ts';
import type { Evaluation } from './evaluation.ts';
import type { Factor } from './factor.ts';
import { type YearSummary, yearSummary } from './highestDensity.ts';
import type { Model, Unit } from './model.ts';
import { meanFrom } from './ordinaryTerms.ts';
import { partTable } from './partTable.ts';
import { type ModelPart, nowBin } from './prepareCase.ts';
import { binOf } from './yearAxis.ts';

/** Where a part came from, as shares that sum to 1, and when it was made. */
export type PartPosterior = { origin: Record<Origin, number>; years: YearSummary };

export const origins = ['of-the-making', 'repair', 'improve', 'other-old'] as const;
export type Origin = (typeof origins)[number];

/** How probable each origin of a part is, and the years of its making, all else summed out exactly. */
export function partPosterior(evaluation: Evaluation, unitIndex: number, part: ModelPart): PartPosterior {
  const { model, looks } = evaluation;
  const { layout } = model;
  const unit = layout.units[unitIndex] as Unit;
  const origin: Record<Origin, number> = { 'of-the-making': 0, repair: 0, improve: 0, 'other-old': 0 };
  const years = new Float64Array(layout.prepared.axis.bins);
  const mine = looks.filter((look) => look.part === part.id && !look.sign.hangsOn.startsWith('alteration/'));
  const table = partTable(part, mine, {
    prepared: layout.prepared,
    draw: model.draw,
    shares: layout.shares,
    columns: [],
    habits: layout.habits,
    old: model.old,
  });
  const old = model.old;

  for (const { source, to, earliest } of sourcesOf(unit, part, model)) {
    const { bins: byMaking, log } = binsAtPart(evaluation, part.id, looks, source);
    const scale = Math.exp(log - evaluation.whole.log);
    for (let bin = 0; bin < byMaking.length; bin++) byMaking[bin] = (byMaking[bin] ?? 0) * scale;
    origin[to] += byMaking.reduce((sum, each) => sum + each, 0);
    if (to === 'of-the-making') addLine(years, byMaking);
    else if (to === 'other-old') addLine(years, spreadOld(byMaking, old));
    else if (unit.alterations.some((each) => each.id === source))
      addLine(years, scaledTo(evaluation, changeYearsAtPart(evaluation, part.id, source)));
    else
      addLine(years, spreadLater(model, byMaking, to === 'repair' ? table.repair : table.improve, earliest));
  }
  const total = origins.reduce((sum, each) => sum + origin[each], 0);
  for (const each of origins)
    origin[each] = total > 0 ? origin[each] / total : each === 'of-the-making' ? 1 : 0;
  return { origin, years: yearSummary(layout.prepared.axis, years, layout.prepared.yearNow) };
}

/** Every way the part may have come: ordinary, by the unit's alterations, by the make-up ones. */
function sourcesOf(
  unit: Unit,
  part: ModelPart,
  model: Model,
): { source: string; to: Origin; earliest: number }[] {
  const ordinary: { source: string; to: Origin; earliest: number }[] = [
    { source: 'own', to: 'of-the-making', earliest: 0 },
  ];
  if (part.renewed !== undefined)
    ordinary.push(
      { source: 'renewed', to: 'repair', earliest: 0 },
      { source: 'reused', to: 'other-old', earliest: 0 },
    );
  const { axis } = model.layout.prepared;
  const altered = [...unit.alterations, ...model.layout.makeUps].flatMap((each) => {
    const change = each.changes[part.kind];
    const earliest = each.earliest === undefined ? 0 : binOf(axis, each.earliest);
    return change === undefined ? [] : [{ source: each.id, to: change.to, earliest }];
  });
  return [...ordinary, ...altered];
}

/** The mass of a whole product by bin of the making. */
export function massByBin(model: Model, whole: Factor): Float64Array {
  const { configs, cells, cellCount, prepared } = model.layout;
  const mass = new Float64Array(prepared.axis.bins);
  const sums = whole.sums[0] as Float64Array;
  for (let m = 0; m < configs.length; m++) {
    for (const { first, count, offset } of cells) {
      const at = m * cellCount + offset;
      for (let i = 0; i < count; i++)
        mass[first + i] = (mass[first + i] as number) + (sums[at + i] as number);
    }
  }
  return mass;
}

/** For a part from another old piece: its years are those of the style, whatever the year of the making. */
function spreadOld(byMaking: Float64Array, old: Float64Array): Float64Array {
  const total = byMaking.reduce((sum, each) => sum + each, 0);
  return old.map((each) => each * total);
}

/** For a part put in later by itself: the mass at each making year spread over the years since, by what its looks say. */
function spreadLater(
  model: Model,
  byMaking: Float64Array,
  likelihood: Float64Array,
  earliest: number,
): Float64Array {
  const now = nowBin(model.layout.prepared);
  const mean = meanFrom(model, likelihood, earliest);
  const years = new Float64Array(byMaking.length);
  let perYear = 0;
  for (let bin = 0; bin <= now; bin++) {
    const weight = mean[bin] ?? 0;
    const span = now - Math.max(bin, Math.min(earliest, now)) + 1;
    if (weight > 0) perYear += (byMaking[bin] ?? 0) / (weight * span);
    if (bin >= earliest) years[bin] = perYear * (likelihood[bin] ?? 0);
  }
  if (earliest > 0) for (let bin = 0; bin < Math.min(earliest, now); bin++) years[bin] = 0;
  return years;
}

/** Masses brought to the scale of the whole product. */
function scaledTo(evaluation: Evaluation, { bins, log }: { bins: Float64Array; log: number }): Float64Array {
  const scale = Math.exp(log - evaluation.whole.log);
  return bins.map((each) => each * scale);
}

function addLine(sum: Float64Array, line: Float64Array): void {
  for (let bin = 0; bin < sum.length; bin++) sum[bin] = (sum[bin] ?? 0) + (line[bin] ?? 0);
}
