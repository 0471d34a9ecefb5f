import type { CalculationContext, CalculationResult } from './define.ts';
import { calculations, findCalculation } from './registry.ts';

/**
 * Runs a calculation that was asked for by its id, as from a terminal or over HTTP, on an input nobody has checked yet.
 *
 * @param id       one of the registry's ids
 * @param input    anything; what does not fit the calculation's fields comes back as faults with their paths
 * @param context  the knowledge, the current year, and where wanted a listener for progress
 * @returns the output, or every fault of the input in one plain sentence each
 */
export function runById(id: string, input: unknown, context: CalculationContext): CalculationResult<unknown> {
  return findCalculation(id)?.answer(input, context) ?? { ok: false, faults: [unknownCalculation(id)] };
}

/**
 * The pictures that have to be read before a calculation can run.
 *
 * @returns the names as they stand in the input; none where it looks at no picture or the input does not fit
 */
export function picturesOf(id: string, input: unknown): readonly string[] {
  return findCalculation(id)?.pictures?.(input) ?? [];
}

function unknownCalculation(id: string) {
  const known = calculations.map((each) => each.id).join(', ');
  return {
    code: 'calculations.unknown',
    path: '',
    message: `There is no calculation “${id}”: the ones there are, are ${known}.`,
  };
}
