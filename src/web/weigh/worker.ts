import { expose } from 'comlink';
import type { CalculationResult } from '../../calculations/define.ts';
import { evidenceWeigh } from '../../calculations/evidence.ts';
import { runCalculation } from '../../calculations/runCalculation.ts';
import type { CaseToWeigh } from '../../evidence/caseToWeigh.ts';
import { ownNamesOnly } from '../../knowledge/ownNamesOnly.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { Kept } from '../../summation/kept.ts';
import type { FirstAnswer } from '../../weighing/firstAnswer.ts';
import type { EarlyLooks } from '../../weighing/weighCase.ts';
import type { Weighing } from '../../weighing/weighing.ts';

/** What a weighing leans on besides the case. */
export type Known = { knowledge: Knowledge; yearNow: number };

/** Weighs off the page's own thread, so that a finger on the drawing is never kept waiting. */
export type WeighingWorker = {
  /** Takes the knowledge, once, before the first case. */
  know(known: Known): void;
  /**
   * @param onProgress  told the share done, 0–1, at most a hundred times
   * @param onEarly     told the next looks as soon as they are known
   * @param onFirst     told the readings, years and parts of a quick weighing as soon as they are known
   */
  weigh(
    caseToWeigh: CaseToWeigh,
    onProgress?: (share: number) => void,
    onEarly?: (looks: EarlyLooks) => void,
    onFirst?: (answer: FirstAnswer) => void,
  ): CalculationResult<Weighing>;
};

const held = { known: undefined as Known | undefined, kept: new Kept() };

expose({
  know({ knowledge, yearNow }) {
    held.known = { knowledge: ownNamesOnly(knowledge), yearNow };
  },
  weigh(caseToWeigh, onProgress, onEarly, onFirst) {
    if (held.known === undefined) throw new Error('no knowledge was handed over');
    let told = 0;
    return runCalculation(evidenceWeigh, caseToWeigh, {
      ...held.known,
      kept: held.kept,
      onProgress: (share) => {
        if (share - told >= 0.01) {
          told = share;
          onProgress?.(share);
        }
        return true;
      },
      onEarly: (looks) => onEarly?.(looks),
      onFirst: onFirst && ((answer) => onFirst(answer)),
    });
  },
} satisfies WeighingWorker);
