import { useEffect, useRef, useState } from 'react';
import type { WorkerWish } from './worker/serviceWorker.ts';

/** Whether a newer version waits on this device, or another tab has begun to use it. */
export type NewerVersion = 'none' | 'waits' | 'in-use';

/** How long after the page the parts are fetched that one tool of the bench needs. */
const restAfterMs = 10_000;
const lookAgainMs = 10 * 60_000;

/**
 * Keeps the app on this device, and tells when a newer version of it has come. The newer one is never used by itself: it
 * waits until it is asked for, or until no page is open any more.
 *
 * @param container  the browser's; undefined where it keeps no app (a plain http address from afar)
 */
export function useNewerVersion(container: ServiceWorkerContainer | undefined = ours()) {
  const [newer, setNewer] = useState<NewerVersion>('none');
  const waiting = useRef<{ worker?: ServiceWorker; asked: boolean }>({ asked: false });

  useEffect(() => {
    if (container === undefined) return;
    const stop = new AbortController();
    const { signal } = stop;
    const had = { controller: container.controller !== null };
    const waits = (worker: ServiceWorker) => {
      // The very first one has nothing to take the place of.
      if (container.controller === null) return;
      waiting.current.worker = worker;
      setNewer('waits');
    };
    container.addEventListener(
      'controllerchange',
      () => {
        if (waiting.current.asked) location.reload();
        else if (had.controller) setNewer('in-use');
        had.controller = true;
      },
      { signal },
    );
    void container
      .register('/sw.js', { updateViaCache: 'none' })
      .then((registration) => watch(registration, container, waits, signal))
      .catch(() => undefined);
    return () => stop.abort();
  }, [container]);

  const goOver = () => {
    // What is being typed becomes an act first.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    const { worker } = waiting.current;
    if (newer === 'in-use' || worker === undefined) return location.reload();
    waiting.current.asked = true;
    worker.postMessage('use-now' satisfies WorkerWish);
  };
  return { newer, goOver };
}

function ours(): ServiceWorkerContainer | undefined {
  return import.meta.env.PROD ? navigator.serviceWorker : undefined;
}

function watch(
  registration: ServiceWorkerRegistration,
  container: ServiceWorkerContainer,
  waits: (worker: ServiceWorker) => void,
  signal: AbortSignal,
): void {
  if (registration.waiting !== null) waits(registration.waiting);
  registration.addEventListener(
    'updatefound',
    () => {
      const fresh = registration.installing;
      fresh?.addEventListener('statechange', () => fresh.state === 'installed' && waits(fresh), { signal });
    },
    { signal },
  );
  const looked = { atMs: Date.now() };
  document.addEventListener(
    'visibilitychange',
    () => {
      if (document.visibilityState !== 'visible' || Date.now() - looked.atMs < lookAgainMs) return;
      looked.atMs = Date.now();
      void registration.update().catch(() => undefined);
    },
    { signal },
  );
  const rest = setTimeout(
    () => container.controller?.postMessage('lay-in-rest' satisfies WorkerWish),
    restAfterMs,
  );
  signal.addEventListener('abort', () => clearTimeout(rest));
}
