import { fromDevice, type KeptFiles, layIn, letGoOfOlder } from './keptFiles.ts';
import { answerKnowledge, layInKnowledge, letGoOfOlderKnowledge } from './knowledgeKept.ts';
import { answerPhoto } from './photoKept.ts';
import { routeOf } from './routeOf.ts';

/** Put in by scripts/installable.mjs: the files of this build. */
declare const keptOnDevice: KeptFiles;

/** What a page may ask of the worker. */
export type WorkerWish = 'use-now' | 'lay-in-rest';

const worker = self as unknown as ServiceWorkerGlobalScope;
const { build, now, later } = keptOnDevice;
const screens = new Set([...now, ...later].map(([path]) => path));

/** Whole or not at all. A newer build waits here until a person asks for it, or no page is open any more. */
worker.addEventListener('install', (event) => {
  event.waitUntil(Promise.all([layIn(now, build), layInKnowledge(build)]));
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(
    Promise.all([letGoOfOlder(build), letGoOfOlderKnowledge(build)]).then(() => worker.clients.claim()),
  );
});

worker.addEventListener('message', (event) => {
  const wish = event.data as WorkerWish;
  if (wish === 'use-now') event.waitUntil(worker.skipWaiting());
  if (wish === 'lay-in-rest') event.waitUntil(layIn(later, build).catch(() => undefined));
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname: path } = new URL(request.url);
  if (origin !== worker.location.origin) return;
  const route = routeOf({ method: request.method, mode: request.mode, path }, (one) => screens.has(one));
  const ask = () => fetch(request);
  if (route.from === 'screens')
    event.respondWith(fromDevice(route.path, build).then((held) => held ?? ask()));
  if (route.from === 'knowledge') event.respondWith(answerKnowledge(ask, build));
  if (route.from === 'photos')
    event.respondWith(answerPhoto(route.sha256, route.size, ask, (work) => event.waitUntil(work)));
});
