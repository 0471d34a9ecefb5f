import { expose } from 'comlink';
import type { CalculationResult } from '../../calculations/define.ts';
import { findCalculation } from '../../calculations/registry.ts';
import { runById } from '../../calculations/runById.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { Picture } from '../../photo/picture.ts';

/** Runs the calculations that look at pictures, off the page's own thread. Ended by the page when it is told to stop. */
export type CalculationWorker = {
  /** @param input  with the places counted from the top left of the part of the picture that is handed over */
  run(id: string, input: unknown, file: string, picture: Picture): CalculationResult<unknown>;
};

expose({
  run(id, input, file, picture) {
    if (findCalculation(id)?.needsKnowledge !== false)
      throw new Error(`${id} leans on the knowledge files, which are not here`);
    return runById(id, input, {
      knowledge: {} as Knowledge,
      yearNow: new Date().getFullYear(),
      pictures: new Map([[file, picture]]),
    });
  },
} satisfies CalculationWorker);
