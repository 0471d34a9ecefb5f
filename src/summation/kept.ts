import { bestDraw } from '../evidence/figures.ts';
import type { PreparedCase } from '../evidence/preparedCase.ts';
import type { Frame } from './layout.ts';
import type { Model } from './model.ts';
import { Worked } from './worked.ts';

/**
 * What one case leaves to the next: of a piece with one finding more only what that finding bears on is worked out anew. Everything is
 * kept under all that it hangs on, and dropped when two cases have not asked for it. For the best figures only: redraws keep nothing.
 */
export class Kept {
  readonly draw = bestDraw();
  #knowledge: PreparedCase['knowledge'] | undefined;
  #name = '';
  #frame: Frame | undefined;
  #sums: Model['worked'] = new Worked();

  /** The frame for a case: that of the case before, where both have the same. */
  frameFor({ knowledge }: PreparedCase, name: string, make: () => Frame): Frame {
    if (this.#frame === undefined || this.#knowledge !== knowledge || this.#name !== name) {
      this.#frame = make();
      this.#sums = new Worked();
      [this.#knowledge, this.#name] = [knowledge, name];
    }
    this.#frame.worked.turn();
    this.#sums.turn();
    return this.#frame;
  }

  /** What was summed in that frame with that draw: no model of another draw may be handed it. */
  get sums(): Model['worked'] {
    return this.#sums;
  }
}
