import { findCalculation } from '../../../calculations/registry.ts';
import { runCalculation } from '../../../calculations/runCalculation.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import type { FromReckoner, ToReckoner } from './pictureMessages.ts';

/** Runs the calculations that look at pictures, off the page's own thread. Ended by the page when it is told to leave off. */
const page = self as unknown as DedicatedWorkerGlobalScope;

page.addEventListener('message', ({ data: { ask, id, input, pictures } }: MessageEvent<ToReckoner>) => {
  const tell = (word: FromReckoner) => page.postMessage(word);
  try {
    if (findCalculation(id)?.needsKnowledge !== false)
      throw new Error(`${id} leans on the knowledge files, which are not here`);
    const result = runCalculation(id, input, {
      knowledge: {} as Knowledge,
      yearNow: new Date().getFullYear(),
      pictures: new Map(pictures),
      onProgress: (share) => {
        tell({ ask, say: 'progress', share });
        return true;
      },
    });
    tell({ ask, say: 'result', result });
  } catch (error) {
    tell({ ask, say: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
});
