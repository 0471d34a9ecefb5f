import { Hono } from 'hono';
import type { RecordStore } from '../record/store.ts';
import type { BackupKeeper } from './backup/backupKeeper.ts';

/** The record as a whole: which one it is, how many acts it holds, and the hash over where it stands. */
export function recordRoutes(store: RecordStore, backups: BackupKeeper): Hono {
  const routes = new Hono();
  routes.get('/', async (context) => {
    const { count, hash } = store.head();
    const { last, warning } = await backups.status();
    return context.json({ id: store.recordId, count, head: hash, backups: { last, warning } });
  });
  return routes;
}
