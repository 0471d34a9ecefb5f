import type { z } from 'zod';
import type { Calculation, CalculationContext, CalculationResult } from './define.ts';

/** What a calculation answers: the type of its own schema. */
export type OutputOf<Of extends Calculation> = z.output<Of['output']>;

/** What may be asked of a calculation, before its schema fills in what was left out. */
export type AskedOf<Of extends Calculation> = Handed<z.input<Of['input']>>;

/** An input as it may be handed in: lists and records of it may be read-only. */
export type Handed<Asked> = Asked extends object
  ? { readonly [Key in keyof Asked]: Handed<Asked[Key]> }
  : Asked;

/**
 * Runs a calculation, with the types of its own schemas.
 *
 * @param input    of its fields; what its schema refuses (a number out of range) comes back as faults with their paths
 * @param context  the knowledge, the current year, and where wanted a listener for progress
 * @returns the output, or every fault of the input in one plain sentence each
 */
export function runCalculation<Asked, Output>(
  calculation: Calculation<Asked, Output>,
  input: Handed<NoInfer<Asked>>,
  context: CalculationContext,
): CalculationResult<Output> {
  return calculation.answer(input, context);
}
