import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from '../test/browser/support/startServer.ts';

/** How long the program takes to start again on a folder it knows, five times: `npx tsx bench/startAgain.ts`. */
const dir = await mkdtemp(join(tmpdir(), 'underside-start-'));
const first = await startServer(dir);
await first.stop();
for (let run = 0; run < 5; run++) {
  const begun = performance.now();
  const again = await startServer(dir);
  console.log(`started again in ${((performance.now() - begun) / 1000).toFixed(2)} s`);
  await again.stop();
}
await rm(dir, { recursive: true, force: true });
