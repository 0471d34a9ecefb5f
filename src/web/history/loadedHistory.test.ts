import { expect, it } from 'vitest';
import type { RecordedEvent } from '../../piece/event.ts';
import { type HistoryPage, joinNewest, joinOlder, nothingLoaded } from './loadedHistory.ts';

/** Acts numbered from one to another, as a page. */
const page = (from: number, to: number, total = to): HistoryPage => ({
  events: Array.from({ length: to - from + 1 }, (_, at) => ({ id: `${from + at}` }) as RecordedEvent),
  total,
  ...(from > 1 ? { older: from } : {}),
});
const ids = ({ events }: { events: readonly RecordedEvent[] }) => events.map(({ id }) => Number(id));

it('grows at both ends without a gap, and no act twice', () => {
  let now = joinNewest(nothingLoaded, page(11, 20));
  expect([ids(now), now.older]).toEqual([ids(page(11, 20)), 11]);
  now = joinOlder(now, page(6, 10, 20));
  now = joinNewest(now, page(13, 22));
  expect([ids(now), now.older, now.total]).toEqual([ids(page(6, 22)), 6, 22]);
  now = joinOlder(joinOlder(now, page(1, 5, 22)), page(1, 5, 22));
  expect([ids(now), now.older]).toEqual([ids(page(1, 22)), undefined]);
});

it('starts anew where acts were missed between what is there and the newest', () => {
  const now = joinNewest(joinNewest(nothingLoaded, page(1, 10)), page(15, 24));
  expect([ids(now), now.older, now.total]).toEqual([ids(page(15, 24)), 15, 24]);
});
