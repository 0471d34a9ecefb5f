import type { Alteration } from '../knowledge/schema.ts';
import type { Evaluation } from './evaluation.ts';
import { posteriorIf } from './posteriorAfter.ts';

/** How probable it is, by all that was found, that an alteration happened, 0–1; 0 where nothing is left to sum. */
export function alterationShare(evaluation: Evaluation, alteration: Alteration): number {
  const { posterior, looks } = evaluation;
  if (posterior.total <= 0) return 0;
  const happened = posteriorIf(evaluation, alteration, true, looks);
  return (happened.total / posterior.total) * Math.exp(happened.log - posterior.log);
}
