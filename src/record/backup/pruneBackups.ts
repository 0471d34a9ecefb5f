import { rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { recordFile } from '../openDataFolder.ts';
import { datedCopies } from './backupFolder.ts';
import { factsOf, syncFolder } from './durableFiles.ts';
import { mayGo } from './keepRule.ts';

/**
 * Removes dated copies that the program made by itself and that newer ones stand for. Copies made by hand stay; so does
 * one that is not whole, with a remark, for its reader to judge. Files in the store are never removed.
 *
 * @param newest  the copy that was just made and verified: nothing is removed on the strength of any other
 * @returns names of those removed, and remarks on those that are not whole
 */
export async function pruneBackups(
  folder: string,
  newest: string,
): Promise<{ removed: string[]; remarks: string[] }> {
  const copies = await datedCopies(folder);
  const remarks = copies
    .filter(({ manifest }) => manifest === undefined)
    .map(({ name }) => `The copy “${name}” is not whole (its list can’t be read): it was left as it is.`);
  const own = copies.flatMap(({ name, path, manifest }) =>
    manifest?.madeBy === 'itself' ? [{ name, path, manifest, madeAt: new Date(manifest.madeAt) }] : [],
  );
  const removed: string[] = [];
  if (!own.some(({ name }) => name === newest)) return { removed, remarks };
  for (const name of mayGo(own)) {
    const copy = own.find((one) => one.name === name);
    if (copy === undefined || name === newest) continue;
    const database = await factsOf(recordFile(copy.path)).catch(() => undefined);
    if (database?.sha256 !== copy.manifest.database.sha256) {
      remarks.push(`The copy “${name}” is not whole (its record.db differs): it was left as it is.`);
      continue;
    }
    // Another name first, so that a cut in the middle leaves nothing that looks like a copy.
    const going = join(folder, `${name}.unfinished`);
    await rename(copy.path, going);
    await rm(going, { recursive: true, force: true });
    removed.push(name);
  }
  if (removed.length > 0) await syncFolder(folder);
  return { removed, remarks };
}
