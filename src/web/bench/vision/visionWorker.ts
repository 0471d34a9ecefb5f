import library from '@techstark/opencv-js';
import { findCard } from './findCard.ts';
import type { FromVision, ToVision } from './messages.ts';
import { readyOpenCv } from './openCv.ts';
import { readGrey } from './readGrey.ts';

/** Looks for the scale card off the page's own thread. With it comes the vision library, so it is started only when first asked. */
const page = self as unknown as DedicatedWorkerGlobalScope;
const ready = readyOpenCv(library);

page.addEventListener('message', async ({ data: { ask, picture } }: MessageEvent<ToVision>) => {
  const tell = (word: FromVision) => page.postMessage(word);
  try {
    const { cv } = await ready;
    tell({ ask, say: 'progress', share: 0.1 });
    const grey = await readGrey(picture);
    tell({ ask, say: 'progress', share: 0.3 });
    const card = findCard(cv, grey, (share) => tell({ ask, say: 'progress', share: 0.3 + 0.7 * share }));
    tell({ ask, say: 'card', card });
  } catch (error) {
    // The library throws numbers when it runs out of memory.
    tell({ ask, say: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
});
