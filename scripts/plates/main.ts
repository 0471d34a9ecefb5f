import { mkdir, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isMainThread, Worker, workerData } from 'node:worker_threads';
import { plateList } from './plateList.ts';
import { platePicture } from './platePicture.ts';

/** What one thread is asked to draw. */
type Share = { outDir: string; plates: number[] };

/**
 * Draws the plates of the worked examples: pictures of pieces that do not exist, the same bytes every time.
 * A bundle of this file draws in several threads; straight from TypeScript a thread cannot start, so one draws all.
 *
 * @param outDir  the folder of the built examples; each example's plates go into its own folder there
 * @param only    draws only the files whose path holds this
 */
export async function drawPlates(outDir: string, only = ''): Promise<void> {
  const wanted = plateList.flatMap(({ example, file }, i) =>
    `${example}/${file}`.includes(only) ? [i] : [],
  );
  const bundled = !fileURLToPath(import.meta.url).endsWith('.ts');
  const threads = bundled ? Math.max(1, Math.min(4, availableParallelism(), wanted.length)) : 1;
  const shares = Array.from({ length: threads }, (_, t) => wanted.filter((_, i) => i % threads === t));
  const [mine = [], ...others] = shares;
  await Promise.all([
    ...others.map((plates) => drawApart({ outDir, plates })),
    drawShare({ outDir, plates: mine }),
  ]);
}

/** Draws a share in a thread of its own, which runs this same file. */
function drawApart(share: Share): Promise<void> {
  return new Promise((done, failed) => {
    const thread = new Worker(new URL(import.meta.url), { workerData: { plateShare: share } });
    thread.once('error', failed);
    thread.once('exit', (code) => (code === 0 ? done() : failed(new Error('A plate could not be drawn.'))));
  });
}

async function drawShare({ outDir, plates }: Share): Promise<void> {
  for (const plate of plates.map((i) => plateList[i])) {
    if (plate === undefined) continue;
    await mkdir(join(outDir, plate.example), { recursive: true });
    await writeFile(join(outDir, plate.example, plate.file), await platePicture(plate));
  }
}

if (!isMainThread && workerData?.plateShare !== undefined) await drawShare(workerData.plateShare);
else if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [outDir, only] = process.argv.slice(2);
  if (outDir === undefined) {
    console.error('Say where the plates go: npx tsx scripts/plates/main.ts FOLDER');
    process.exitCode = 2;
  } else await drawPlates(outDir, only);
}
