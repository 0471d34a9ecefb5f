import type { Calculation, CalculationContext } from '../define.ts';

/** What a calculation that leans on nothing but its input is handed. */
export const noKnowledge = { yearNow: 2026 } as CalculationContext;

/**
 * What a calculation answers to an input of a table or of a test's own, which its schema reads.
 *
 * @throws Error with the faults, where the input does not fit
 */
export function outputOf<Output>(
  calculation: Calculation<unknown, Output>,
  input: unknown,
  context: CalculationContext = noKnowledge,
): Output {
  const result = calculation.answer(input, context);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.output;
}
