import type { CardFound } from './findCard.ts';
import type { FromVision, ToVision } from './messages.ts';

/** What is used of a worker; tests hand in their own. */
export type VisionWorker = {
  postMessage(word: ToVision): void;
  terminate(): void;
  onmessage: ((event: { data: FromVision }) => void) | null;
  onerror: ((event: { message?: string; preventDefault?: () => void }) => void) | null;
};

/** The finder of the scale card, for the page. */
export type Vision = {
  /**
   * Looks for the card in a picture file.
   *
   * @param onProgress  told the share done, 0–1
   * @returns pairs ready for `photo.rectify`, or one sentence that says what to do
   */
  findCard(picture: Blob, onProgress?: (share: number) => void): Promise<CardFound>;
  /** Ends the worker and gives its memory back; asked again, it starts anew. Searches under way end as not found. */
  close(): void;
};

type Asked = { resolve: (card: CardFound) => void; onProgress: (share: number) => void };

const broken: CardFound = {
  found: false,
  message:
    'The search for the card broke off, perhaps for want of memory: try again with a smaller copy of the picture, or mark four points of known place by hand.',
};

/**
 * Opens the finder. Nothing is loaded before it is first asked; after an error the worker is ended, and a new one started when next
 * asked, since the library's memory can't be trusted then.
 */
export function openVision(startWorker: () => VisionWorker = startVisionWorker): Vision {
  const desk = { worker: undefined as VisionWorker | undefined, asks: 0, asked: new Map<number, Asked>() };
  const end = () => {
    desk.worker?.terminate();
    desk.worker = undefined;
    const waiting = [...desk.asked.values()];
    desk.asked.clear();
    for (const { resolve } of waiting) resolve(broken);
  };
  const start = (): VisionWorker => {
    const worker = startWorker();
    worker.onmessage = ({ data }) => {
      const one = desk.asked.get(data.ask);
      if (one === undefined) return;
      if (data.say === 'progress') one.onProgress(data.share);
      else if (data.say === 'failed') end();
      else {
        desk.asked.delete(data.ask);
        one.resolve(data.card);
      }
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      end();
    };
    return worker;
  };
  return {
    findCard(picture, onProgress = () => {}) {
      desk.worker ??= start();
      const ask = ++desk.asks;
      const { worker } = desk;
      return new Promise((resolve) => {
        desk.asked.set(ask, { resolve, onProgress });
        worker.postMessage({ ask, say: 'find-card', picture });
      });
    },
    close: end,
  };
}

function startVisionWorker(): VisionWorker {
  return new Worker(new URL('./visionWorker.ts', import.meta.url), {
    type: 'module',
  }) as unknown as VisionWorker;
}
