import { Hono } from 'hono';
import type { RecordStore } from '../record/store.ts';

/** The record as a whole: which one it is, how many acts it holds, and the hash over where it stands. */
export function recordRoutes(store: RecordStore): Hono {
  const routes = new Hono();
  routes.get('/', (context) => {
    const { count, hash } = store.head();
    return context.json({ id: store.recordId, count, head: hash });
  });
  return routes;
}
