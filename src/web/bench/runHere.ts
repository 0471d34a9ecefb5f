import type { Calculation, CalculationResult } from '../../calculations/define.ts';
import { type Handed, runCalculation } from '../../calculations/runCalculation.ts';
import type { Knowledge } from '../../knowledge/schema.ts';

/** Runs a calculation that looks at no picture, at once. */
export function runHere<Asked, Output>(
  calculation: Calculation<Asked, Output>,
  input: Handed<NoInfer<Asked>>,
  knowledge: Knowledge,
): CalculationResult<Output> {
  return runCalculation(calculation, input, { knowledge, yearNow: new Date().getFullYear() });
}
