import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { writeDurably } from './backup/durableFiles.ts';

/** What is set for a whole record, on whichever device it is opened. */
const settings = z.object({
  /** Where dated copies go; beside the data folder where none was chosen. */
  backupFolder: z.string().optional(),
  /** Whether the program makes copies by itself. */
  dailyBackups: z.boolean().default(true),
});
export type Settings = z.infer<typeof settings>;

const settingsFile = (dataDir: string) => join(dataDir, 'settings.json');

/** The settings of a data folder; the usual ones where there are none or they can't be read. */
export function readSettings(dataDir: string): Settings {
  try {
    const read = settings.safeParse(JSON.parse(readFileSync(settingsFile(dataDir), 'utf8')));
    if (read.success) return read.data;
  } catch {
    // None were made yet, or a person's edit left the file unreadable: the program goes on with the usual ones.
  }
  return settings.parse({});
}

/** Keeps the settings in the data folder. */
export function writeSettings(dataDir: string, next: Settings): Promise<void> {
  return writeDurably(settingsFile(dataDir), `${JSON.stringify(next, null, 2)}\n`);
}
