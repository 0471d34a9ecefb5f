import type { RecordedEvent } from '../../piece/event.ts';

/** A page of acts as the record gives it, oldest first; `older` is what to ask before for the page that precedes it. */
export type HistoryPage = { events: RecordedEvent[]; total: number; older?: number };

/** A run of acts without a gap that ends at the newest. */
export type LoadedHistory = { events: readonly RecordedEvent[]; total: number; older: number | undefined };

export const nothingLoaded: LoadedHistory = { events: [], total: 0, older: undefined };

/** The newest page put to what is there; where acts between the two were missed, only the page is kept. */
export function joinNewest(now: LoadedHistory, page: HistoryPage): LoadedHistory {
  const fresh = { events: page.events, total: page.total, older: page.older };
  const last = now.events.at(-1)?.id;
  const meets = page.events.findIndex((event) => event.id === last);
  if (meets === -1) return fresh;
  return {
    events: [...now.events, ...page.events.slice(meets + 1)],
    total: page.total,
    older: now.older,
  };
}

/** An older page put before what is there. */
export function joinOlder(now: LoadedHistory, page: HistoryPage): LoadedHistory {
  const there = new Set(now.events.map((event) => event.id));
  const fresh = page.events.filter((event) => !there.has(event.id));
  return { events: [...fresh, ...now.events], total: page.total, older: page.older };
}
