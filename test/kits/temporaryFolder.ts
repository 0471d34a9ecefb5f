import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of the test's own, removed when it ends. */
export async function temporaryFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'underside-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}
