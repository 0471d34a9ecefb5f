import { readdir } from 'node:fs/promises';
import { join } from 'node:path';

/** What of a data folder, beside the database, can't be made again: folders with all that is in them, and single files. */
const heldFolders = ['photos', 'own-knowledge', 'issued'];
const heldFiles = ['settings.json'];

/** Names of what is still being written. */
const unfinished = /\.(new|unfinished|part)$|^\./;

/** The files of a data folder that a back-up holds beside the database, by their paths within it, sorted. */
export async function sourceFiles(dataDir: string): Promise<string[]> {
  const found: string[] = [];
  for (const folder of heldFolders) await walk(dataDir, folder, found);
  const top: string[] = await readdir(dataDir).catch(() => []);
  found.push(...heldFiles.filter((name) => top.includes(name)));
  return found.sort();
}

async function walk(dataDir: string, inner: string, found: string[]): Promise<void> {
  const entries = await readdir(join(dataDir, inner), { withFileTypes: true }).catch((error) => {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  });
  for (const entry of entries) {
    if (unfinished.test(entry.name)) continue;
    if (entry.isDirectory()) await walk(dataDir, `${inner}/${entry.name}`, found);
    else if (entry.isFile()) found.push(`${inner}/${entry.name}`);
  }
}
