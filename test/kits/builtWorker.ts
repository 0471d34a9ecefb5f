import { randomUUID } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A worker of ours as the built program has it: a thread can't start from TypeScript. */
export async function builtWorker(source: string): Promise<URL> {
  const outfile = `${root}.cache/tests/${randomUUID()}.mjs`;
  await build({
    absWorkingDir: root,
    entryPoints: [source],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
  });
  afterAll(() => rm(outfile, { force: true }));
  return pathToFileURL(outfile);
}
