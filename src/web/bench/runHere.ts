import type { CalculationContext, CalculationResult } from '../../calculations/define.ts';
import { runCalculation } from '../../calculations/runCalculation.ts';
import type { Knowledge } from '../../knowledge/schema.ts';

/** Runs a calculation that looks at no picture, at once. */
export function runHere<Output>(id: string, input: unknown, knowledge: Knowledge): CalculationResult<Output> {
  const context: CalculationContext = { knowledge, yearNow: new Date().getFullYear() };
  return runCalculation(id, input, context) as CalculationResult<Output>;
}
