import type { CalculationContext, CalculationResult } from '../../calculations/define.ts';
import { runCalculation } from '../../calculations/runCalculation.ts';
import type { CaseToWeigh } from '../../evidence/caseToWeigh.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { EarlyLooks } from '../../weighing/weighCase.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { FromWeigher } from './messages.ts';

/**
 * Weighs one case and tells how far it is on the way. What goes wrong inside is answered as a fault in words,
 * so that a page never waits for an answer that does not come.
 *
 * @param tell  called with the next looks as soon as they are known, with each step of progress (at most a hundred) and at
 *   last with the result
 */
export function answerWeigher(
  ask: number,
  caseToWeigh: CaseToWeigh,
  known: { knowledge: Knowledge; yearNow: number },
  tell: (answer: FromWeigher) => void,
): void {
  let told = 0;
  const onProgress = (share: number): boolean => {
    if (share - told >= 0.01) {
      told = share;
      tell({ say: 'progress', ask, share });
    }
    return true;
  };
  const onEarly = (looks: unknown) => tell({ say: 'early', ask, looks: looks as EarlyLooks });
  tell({ say: 'weighed', ask, result: weighed(caseToWeigh, { ...known, onProgress, onEarly }) });
}

function weighed(caseToWeigh: CaseToWeigh, context: CalculationContext): CalculationResult<Weighing> {
  try {
    return runCalculation('evidence.weigh', caseToWeigh, context) as CalculationResult<Weighing>;
  } catch (slip) {
    const why = slip instanceof Error ? slip.message : String(slip);
    const message = `The findings could not be weighed: the program broke off (${why}). Nothing that was recorded is lost; load the page anew.`;
    return { ok: false, faults: [{ code: 'weigh.broke-off', path: '', message }] };
  }
}
