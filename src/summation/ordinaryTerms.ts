import { type ModelPart, nowBin } from '../evidence/preparedCase.ts';
import { worlds } from '../evidence/worlds.ts';
import { midYear } from '../evidence/yearAxis.ts';
import { noughts } from './memory.ts';
import type { Model } from './model.ts';
import { onceIn } from './worked.ts';

/**
 * Share of parts renewed in ordinary use by bin of the making. The form's figure is for a piece of the middle of its
 * style's years; with a constant yearly chance, younger pieces have had less time: 1 − (1 − r)^(age / that age).
 */
export function renewedByBin(model: Model, part: ModelPart): Float64Array {
  return onceIn(model.worked, 'renewed', part.id, () => renewedLine(model, part));
}

function renewedLine(model: Model, part: ModelPart): Float64Array {
  const { prepared } = model.layout;
  const share = part.renewed === undefined ? 0 : model.draw(part.renewed);
  const [from, to] = prepared.form.styleSpan;
  const fullAge = Math.max(1, prepared.yearNow - (from + to) / 2);
  return Float64Array.from({ length: prepared.axis.bins }, (_, bin) => {
    const age = Math.max(0, prepared.yearNow - midYear(prepared.axis, bin));
    return 1 - (1 - share) ** (age / fullAge);
  });
}

/** Share of parts that the maker took from another old piece, in a world. */
export function reusedIn(model: Model, part: ModelPart, worldIndex: number): number {
  if (part.renewed === undefined) return 0;
  const { making, stock } = worlds[worldIndex] ?? { making: 'period', stock: 'new' };
  const { reused } = model.layout.prepared.knowledge.making;
  return model.draw(stock === 'old' ? reused.ofOldStock : reused[making]);
}

/** For each bin, the mean of a line from there (or from a first possible bin, if later) to the current year. */
export function meanFrom(model: Model, line: Float64Array, earliestBin = 0): Float64Array {
  const now = nowBin(model.layout.prepared);
  const mean = noughts(line.length);
  let sum = 0;
  for (let bin = now; bin >= 0; bin--) {
    if (bin >= earliestBin) sum += line[bin] ?? 0;
    mean[bin] = sum / (now - Math.max(bin, Math.min(earliestBin, now)) + 1);
  }
  return mean;
}
