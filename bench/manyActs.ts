import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { openPhotos, photoLimits } from '../src/record/photos.ts';
import { sqliteLog } from '../src/record/sqliteLog.ts';
import { createStore } from '../src/record/store.ts';
import { verifyRecord } from '../src/record/verify.ts';
import { pieceRoutes } from '../src/server/pieceRoutes.ts';
import { act, finding, opening } from '../test/kits/drafts.ts';

/**
 * How long a piece with 20,000 acts takes to open, and how long others wait meanwhile: `npx tsx bench/manyActs.ts [ACTS]`.
 *
 * Half of the acts record findings on ever new places, half change what was found on one of the first 500.
 */
const acts = Number(process.argv[2] ?? 20_000);
const dir = mkdtempSync(join(tmpdir(), 'underside-bench-'));
const file = join(dir, 'record.db');

const writing = createStore(sqliteLog(file));
const began = performance.now();
writing.append([opening('one')]);
for (let n = 0; n < acts; n += 1000)
  writing.append(
    Array.from({ length: Math.min(1000, acts - n) }, (_, at) => {
      const sign = (n + at) % 2 === 0 ? `sign-${n + at}` : `sign-${(n + at) % 500}`;
      return finding('one', sign, 'top');
    }),
  );
const handIn = performance.now() - began;
writing.close();

const log = sqliteLog(file);
const store = createStore(log);
const routes = pieceRoutes(
  store,
  await openPhotos(dir, { ...photoLimits, heicWorker: new URL('file:///none') }),
);
const ask = async (path: string) => (await routes.request(`http://127.0.0.1${path}`)).text();

console.log(
  `${cpus()[0]?.model ?? 'unknown machine'}, ${cpus().length} cores, Node ${process.version}; ${acts} acts`,
);
const say = (what: string, ms: number) => console.log(`${what.padEnd(60)} ${ms.toFixed(0).padStart(7)} ms`);
say('handed in, by 1,000', handIn);
await timed('the list of pieces, first page after the start', () => ask('/'));
await timed('the piece, read in already', () => ask('/one'));
await timed('the newest 200 acts of its history', () => ask('/one/history?most=200'));
await timed('one more act', async () =>
  store.append([act('one', 'piece-described', [{ path: ['title'], to: 'New' }])]),
);
await timed('the piece after it', () => ask('/one'));
log.close();
await timed('verify', async () => console.log((await verifyRecord(dir)).ok ? '(holds)' : '(does not hold)'));
rmSync(dir, { recursive: true });

/** Times the work, and the longest that anything else had to wait for it. */
async function timed(what: string, work: () => Promise<unknown>): Promise<void> {
  const delay = monitorEventLoopDelay({ resolution: 1 });
  await new Promise((resolve) => setTimeout(resolve, 20));
  delay.enable();
  const start = performance.now();
  await work();
  const took = performance.now() - start;
  await new Promise((resolve) => setTimeout(resolve, 20));
  delay.disable();
  say(`${what} (others waited ${(delay.max / 1e6).toFixed(0)} ms)`, took);
}
