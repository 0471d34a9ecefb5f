import type { CalculationResult } from '../../calculations/define.ts';
import type { CaseToWeigh } from '../../evidence/caseToWeigh.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { EarlyLooks } from '../../weighing/weighCase.ts';
import type { Weighing } from '../../weighing/weighing.ts';

/** What the page says to the worker that weighs. Knowledge is handed over once, before the first case. */
export type ToWeigher =
  | { say: 'know'; knowledge: Knowledge; yearNow: number }
  | { say: 'weigh'; ask: number; caseToWeigh: CaseToWeigh };

/** What the worker answers; `ask` is the number of the question answered. */
export type FromWeigher =
  | { say: 'progress'; ask: number; share: number }
  | { say: 'early'; ask: number; looks: EarlyLooks }
  | { say: 'weighed'; ask: number; result: CalculationResult<Weighing> };
