import { type Endpoint, type ProxyMarked, proxy, type Remote, wrap } from 'comlink';

/** What of a worker is used here; a test hands in one of its own. */
export type WorkerLike = Endpoint & { terminate(): void };

/** A worker whose functions are called as one's own. Nothing is started before the first call. */
export type CalledWorker<Api> = {
  /**
   * Calls a function of the worker. A call that fails ends it, since what it holds can't be trusted then: the next call starts
   * another.
   *
   * @param ask  gets the worker's functions, and `heard`, through which a listener is handed to one of them: it hears nothing more
   *   once the call has its answer, which may overtake what was told before it
   * @throws WorkerEnded where it was ended first, otherwise an Error with what was thrown inside or what broke it
   */
  call<Answer extends Promise<unknown>>(
    ask: (api: Remote<Api>, heard: Heard) => Answer,
  ): Promise<Awaited<Answer>>;
  /** Ends it and all that it is at. Called again, it starts anew. */
  end(): void;
};

/** Thrown at whoever waits for a worker that was ended by the page itself: nothing went wrong. */
export class WorkerEnded extends Error {}

type Heard = <Said extends unknown[]>(
  listener: (...said: Said) => void,
) => ((...said: Said) => void) & ProxyMarked;

type Started<Api> = { worker: WorkerLike; api: Remote<Api>; waiting: Set<(why: Error) => void> };

/**
 * Opens a worker for calls.
 *
 * @param start    makes a fresh worker, which hands out its functions by comlink's `expose`
 * @param prepare  called once with every fresh worker, before its first call: to hand over what it has to hold
 */
export function openWorker<Api>(
  start: () => WorkerLike,
  prepare: (api: Remote<Api>) => PromiseLike<unknown> | undefined = () => undefined,
): CalledWorker<Api> {
  let now: Started<Api> | undefined;
  const endOf = (one: Started<Api>, why: Error) => {
    if (now === one) now = undefined;
    one.worker.terminate();
    for (const fail of one.waiting) fail(why);
    one.waiting.clear();
  };
  const begin = (): Started<Api> => {
    const worker = start();
    const one: Started<Api> = { worker, api: wrap<Api>(worker), waiting: new Set() };
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      endOf(one, new Error((event as ErrorEvent).message ?? ''));
    });
    prepare(one.api)?.then(undefined, (slip) => endOf(one, errorOf(slip)));
    return one;
  };
  return {
    call<Answer extends Promise<unknown>>(ask: (api: Remote<Api>, heard: Heard) => Answer) {
      now ??= begin();
      const one = now;
      return new Promise<Awaited<Answer>>((resolve, reject) => {
        one.waiting.add(reject);
        const heard: Heard = (listener) =>
          proxy((...said) => {
            if (one.waiting.has(reject)) listener(...said);
          });
        ask(one.api, heard).then(
          (answer) => {
            one.waiting.delete(reject);
            resolve(answer as Awaited<Answer>);
          },
          (slip) => endOf(one, errorOf(slip)),
        );
      });
    },
    end() {
      if (now !== undefined) endOf(now, new WorkerEnded());
    },
  };
}

/** A library may throw numbers when it runs out of memory. */
function errorOf(slip: unknown): Error {
  return slip instanceof Error ? slip : new Error(String(slip));
}
