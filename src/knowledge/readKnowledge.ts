import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { KnowledgeFile } from './readEntries.ts';

/**
 * Every YAML file of a knowledge folder, with paths from that folder in forward slashes, sorted.
 *
 * @throws the system's error if the folder can't be read
 */
export async function readKnowledgeFolder(folder: string): Promise<KnowledgeFile[]> {
  const names = await readdir(folder, { recursive: true });
  const paths = names
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.yaml'))
    .sort();
  return Promise.all(paths.map(async (path) => ({ path, text: await readFile(join(folder, path), 'utf8') })));
}
