import { createHash } from 'node:crypto';
import { lstat, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Everything in a folder, and the folder itself: names, bytes, sizes, rights and times of change, one line each. */
export async function folderStamp(dir: string): Promise<string[]> {
  const names = ['', ...(await readdir(dir, { recursive: true })).sort()];
  return Promise.all(
    names.map(async (name) => {
      const { mode, mtimeMs, size } = await lstat(join(dir, name));
      const bytes = await readFile(join(dir, name)).catch(() => 'a folder');
      const hash = createHash('sha256').update(bytes).digest('hex');
      return [name, mode.toString(8), mtimeMs, size, hash].join(' ');
    }),
  );
}
