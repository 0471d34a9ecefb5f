import { deviceStore, keep, names, readKept, tabStore } from '../drawer/drawer.ts';
import { actsAside } from './actsAside.ts';
import { type Desk, openDesk } from './desk.ts';
import type { PhotosToHand } from './deskState.ts';
import { freshId, momentWithZone, readIdentity } from './identity.ts';
import { openOutbox } from './outbox.ts';
import { pieceServer } from './pieceServer.ts';

/** The desk of this browser: its outbox, the photos it keeps, the server it came from, its clock, and its other tabs. */
export function openBrowserDesk(photos: PhotosToHand): Desk {
  const tabs = typeof BroadcastChannel === 'function' ? new BroadcastChannel('underside') : undefined;
  const desk = openDesk({
    outbox: openOutbox(),
    aside: actsAside(deviceStore(), tabId(), () => Date.now()),
    server: pieceServer((input, init) => fetch(input, init)),
    lastRecord: {
      read: () => readKept(names.record) ?? undefined,
      keep: (id) => keep(names.record, id),
    },
    photos,
    identity: readIdentity,
    now: () => momentWithZone(new Date()),
    freshId,
    later: (ms, act) => {
      const timer = setTimeout(act, ms);
      return () => clearTimeout(timer);
    },
    alone: async (work) => {
      if (navigator.locks === undefined) await work();
      else await navigator.locks.request('underside-outbox', work);
    },
    tell: (pieceId) => tabs?.postMessage(pieceId),
  });
  tabs?.addEventListener('message', (message) => {
    if (typeof message.data === 'string') desk.hear(message.data);
  });
  addEventListener('online', () => desk.wake());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') desk.wake();
  });
  return desk;
}

/** A name for this tab that outlives a reload. */
function tabId(): string {
  const tab = readKept(names.tab, tabStore()) ?? freshId();
  keep(names.tab, tab, tabStore());
  return tab;
}
