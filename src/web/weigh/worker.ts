import { expose } from 'comlink';
import type { CalculationResult } from '../../calculations/define.ts';
import { evidenceSuspicion } from '../../calculations/evidenceSuspicion.ts';
import { inputFaults } from '../../calculations/inputFaults.ts';
import { type CaseToWeigh, caseToWeigh } from '../../evidence/caseToWeigh.ts';
import { ownNamesOnly } from '../../knowledge/ownNamesOnly.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { Kept } from '../../summation/kept.ts';
import type { FirstAnswer } from '../../weighing/firstAnswer.ts';
import type { Suspicion } from '../../weighing/suspicion.ts';
import { type EarlyLooks, weighInSteps } from '../../weighing/weighCase.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { newestOnly } from './newestOnly.ts';

/** What a weighing leans on besides the case. */
export type Known = { knowledge: Knowledge; yearNow: number };

/** Weighs off the page's own thread, so that a finger on the drawing is never kept waiting. */
export type WeighingWorker = {
  /** Takes the knowledge, once, before the first case. */
  know(known: Known): void;
  /**
   * Weighs a case, and drops the one before it if that is still being weighed: a finger waits for no more than one step of it.
   *
   * @param onProgress  told the share done, 0–1, at most a hundred times
   * @param onEarly     told the next looks as soon as they are known
   * @param onFirst     told the readings, years and parts of a quick weighing as soon as they are known
   * @returns the weighing, or undefined where it was dropped
   */
  weigh(
    input: CaseToWeigh,
    onProgress?: (share: number) => void,
    onEarly?: (looks: EarlyLooks) => void,
    onFirst?: (answer: FirstAnswer) => void,
  ): Promise<CalculationResult<Weighing> | undefined>;
  /** What would settle whether one alteration happened. */
  suspect(input: CaseToWeigh, alteration: string): CalculationResult<Suspicion>;
};

const held = { known: undefined as Known | undefined, kept: new Kept() };
const drive = newestOnly();

expose({
  know({ knowledge, yearNow }) {
    held.known = { knowledge: ownNamesOnly(knowledge), yearNow };
  },
  async weigh(input, onProgress, onEarly, onFirst) {
    if (held.known === undefined) throw new Error('no knowledge was handed over');
    const read = caseToWeigh.safeParse(input);
    if (!read.success) return { ok: false, faults: inputFaults(read.error.issues, input) };
    let told = 0;
    const steps = weighInSteps(read.data, held.known.knowledge, {
      yearNow: held.known.yearNow,
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
    return drive(steps);
  },
  suspect(input, alteration) {
    if (held.known === undefined) throw new Error('no knowledge was handed over');
    return evidenceSuspicion.answer({ case: input, alteration }, held.known);
  },
} satisfies WeighingWorker);
