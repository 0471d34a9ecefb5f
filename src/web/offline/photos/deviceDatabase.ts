import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { HeldPhoto } from './heldPhoto.ts';

/** What the app keeps in this browser's database besides acts: files where there is no file system, and photos that wait. */
export interface DeviceSchema extends DBSchema {
  files: { key: string; value: { bytes: ArrayBuffer; type: string } };
  held: { key: string; value: HeldPhoto };
}

/** Opens the database for one piece of work and closes it, so that a newer version of the app never waits for a page. */
export async function withDatabase<Answer>(
  work: (database: IDBPDatabase<DeviceSchema>) => Promise<Answer>,
): Promise<Answer> {
  const database = await openDB<DeviceSchema>('underside-files', 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('files');
      fresh.createObjectStore('held', { keyPath: 'sha256' });
    },
  });
  return work(database).finally(() => database.close());
}
