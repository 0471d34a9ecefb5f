import { Worker } from 'node:worker_threads';

/** What a worker is asked, and what it says while it works and at the end. */
export type WorkerQuestion<Question> = { ask: number; question: Question };
export type WorkerWord<Answer, Step> =
  | { ask: number; step: Step }
  | { ask: number; answer: Answer }
  | { ask: number; failed: string };

/** A thread for long work. It is started when first asked, and again after it died. */
export type WorkerQueue<Question, Answer, Step> = {
  ask(question: Question, onStep?: (step: Step) => void): Promise<Answer>;
  close(): Promise<void>;
};

type Asked<Answer, Step> = {
  resolve: (answer: Answer) => void;
  reject: (error: Error) => void;
  onStep: ((step: Step) => void) | undefined;
};

type Thread<Answer, Step> = { worker: Worker; asked: Map<number, Asked<Answer, Step>> };

/**
 * Asks a worker file question by question.
 *
 * @param file        the built worker
 * @param workerData  handed to it when it starts
 */
export function openWorkerQueue<Question, Answer, Step>(
  file: URL,
  workerData: unknown,
): WorkerQueue<Question, Answer, Step> {
  const queue = { thread: undefined as Thread<Answer, Step> | undefined, asks: 0 };

  const start = (): Thread<Answer, Step> => {
    const worker = new Worker(file, { workerData });
    worker.unref();
    // A thread's questions are its own: it says that it ended some time after it failed, when another may be at work.
    const asked: Thread<Answer, Step>['asked'] = new Map();
    const thread = { worker, asked };
    const end = (why: string) => {
      if (queue.thread === thread) queue.thread = undefined;
      for (const one of asked.values()) one.reject(new Error(why));
      asked.clear();
    };
    worker.on('message', (word: WorkerWord<Answer, Step>) => {
      const one = asked.get(word.ask);
      if (one === undefined) return;
      if ('step' in word) return one.onStep?.(word.step);
      asked.delete(word.ask);
      if ('answer' in word) one.resolve(word.answer);
      else one.reject(new Error(word.failed));
    });
    worker.on('error', (error) => end(error instanceof Error ? error.message : String(error)));
    worker.on('exit', () => end('The work stopped before its end.'));
    return thread;
  };

  return {
    ask(question, onStep) {
      queue.thread ??= start();
      const ask = ++queue.asks;
      const { worker, asked } = queue.thread;
      return new Promise<Answer>((resolve, reject) => {
        asked.set(ask, { resolve, reject, onStep });
        worker.postMessage({ ask, question } satisfies WorkerQuestion<Question>);
      });
    },
    async close() {
      await queue.thread?.worker.terminate();
    },
  };
}
