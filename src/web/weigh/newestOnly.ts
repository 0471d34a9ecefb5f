import type { Steps } from '../../ground/steps.ts';

/** For so long work goes on before it looks whether newer has come. */
const sliceMs = 4;

/** Drives one work at a time: newer work drops what is under way, at its next step. */
export function newestOnly(pause = whatCameMeanwhile) {
  let newest = 0;
  /** @returns the answer, or undefined where newer work came before it was there */
  return async <Answer>(steps: Steps<Answer>): Promise<Answer | undefined> => {
    const mine = ++newest;
    for (;;) {
      await pause();
      if (mine !== newest) return undefined;
      const until = performance.now() + sliceMs;
      do {
        const step = steps.next();
        if (step.done === true) return step.value;
      } while (performance.now() < until);
    }
  };
}

/** Lets a worker take up the messages that wait. */
function whatCameMeanwhile(): Promise<void> {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
