import type { CalculationContext, CalculationResult } from './define.ts';
import { inputFaults } from './inputFaults.ts';
import { calculations, findCalculation } from './registry.ts';

/**
 * Runs a calculation on an input that has not been checked yet.
 *
 * @param id       one of the registry's ids
 * @param input    anything; what does not fit the calculation's fields comes back as faults with their paths
 * @param context  the knowledge, the current year, and where wanted a listener for progress
 * @returns the output, or every fault of the input in one plain sentence each
 */
export function runCalculation(
  id: string,
  input: unknown,
  context: CalculationContext,
): CalculationResult<unknown> {
  const calculation = findCalculation(id);
  if (!calculation) return { ok: false, faults: [unknownCalculation(id)] };
  const read = calculation.input.safeParse(input);
  if (!read.success) return { ok: false, faults: inputFaults(read.error.issues, input) };
  return calculation.run(read.data, context);
}

/**
 * The pictures that have to be read before a calculation can run.
 *
 * @returns the names as they stand in the input; none where it looks at no picture or the input does not fit
 */
export function picturesOf(id: string, input: unknown): readonly string[] {
  const calculation = findCalculation(id);
  if (calculation?.pictures === undefined) return [];
  const read = calculation.input.safeParse(input);
  return read.success ? calculation.pictures(read.data) : [];
}

function unknownCalculation(id: string) {
  const known = calculations.map((each) => each.id).join(', ');
  return {
    code: 'calculations.unknown',
    path: '',
    message: `There is no calculation “${id}”: the ones there are, are ${known}.`,
  };
}
