import { Hono } from 'hono';
import type { ReadOnly } from '../record/readOnly/readOnly.ts';
import type { RecordStore } from '../record/store.ts';
import type { BackupKeeper, BackupStatus } from './backup/backupKeeper.ts';

/** What the screens are told of the record as a whole. */
export type RecordAnswer = {
  id: string;
  /** How many acts it holds, and the hash over where it stands. */
  count: number;
  head: string;
  backups: Pick<BackupStatus, 'last' | 'warning'>;
  /** What to say on every page where it is only looked at; null where entries are taken. */
  readOnly: ReadOnly | null;
};

/** The record as a whole: which one it is, where it stands, and whether it can be written. */
export function recordRoutes(store: RecordStore, backups: BackupKeeper, readOnly?: ReadOnly): Hono {
  const routes = new Hono();
  routes.get('/', async (context) => {
    const { count, hash } = store.head();
    const { last, warning } = await backups.status();
    return context.json({
      id: store.recordId,
      count,
      head: hash,
      backups: { last, warning },
      readOnly: readOnly ?? null,
    } satisfies RecordAnswer);
  });
  return routes;
}
