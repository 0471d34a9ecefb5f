import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { CardFound } from '../src/web/bench/vision/findCard.ts';
import { openBrowser } from '../test/browser/support/openBrowser.ts';

/** What a picture cost in a real Chromium: the search from file to pairs, and the most memory of any one of its processes. */
export type BrowserCost = { card: CardFound; ms: number; againMs: number; beforeMb: number; mostMb: number };

type Page = { findCard: (picture: Blob) => Promise<CardFound> };

/**
 * Finds the card in a picture file in Chromium, as the screens do: worker, library and policy of the server included.
 *
 * @param headersOf  gives the policy headers for a path
 */
export async function findInBrowser(
  jpeg: Buffer,
  headersOf: (path: string) => Promise<Record<string, string>>,
): Promise<BrowserCost> {
  const work = fileURLToPath(new URL('../.cache/bench-vision/', import.meta.url));
  await rm(work, { recursive: true, force: true });
  await mkdir(work, { recursive: true });
  await writeFile(
    join(work, 'index.html'),
    '<!doctype html><title>vision</title><script type="module" src="./main.ts"></script>',
  );
  await writeFile(
    join(work, 'main.ts'),
    "import { openVision } from '../../src/web/bench/vision/openVision.ts'; const vision = openVision(); globalThis.findCard = (picture) => vision.findCard(picture);",
  );
  await build({
    configFile: false,
    root: work,
    logLevel: 'warn',
    worker: { format: 'es' },
    build: {
      outDir: join(work, 'out'),
      target: 'es2022',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
    },
  });
  const files = new Map<string, Buffer>([['/photo.jpg', jpeg]]);
  for (const name of [
    'index.html',
    ...(await readdir(join(work, 'out/assets'))).map((one) => `assets/${one}`),
  ])
    files.set(`/${name}`, await readFile(join(work, 'out', name)));
  const types: Record<string, string> = {
    '.html': 'text/html',
    '.js': 'text/javascript',
    '.jpg': 'image/jpeg',
  };
  const server = createServer(async ({ url = '/' }, answer) => {
    const bytes = files.get(url);
    const headers = await headersOf(url);
    answer.writeHead(bytes === undefined ? 404 : 200, {
      ...headers,
      'content-type': types[extname(url)] ?? 'text/plain',
    });
    answer.end(bytes);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    page.on('console', (word) => console.error('page:', word.text()));
    page.on('pageerror', (error) => console.error('page:', error.message));
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/index.html`);
    await page.waitForFunction(() => 'findCard' in globalThis);
    const beforeMb = Math.max(...(await renderersMb()));
    const most = { mb: beforeMb, going: true };
    const watch = (async () => {
      while (most.going) {
        most.mb = Math.max(most.mb, ...(await renderersMb()));
        await new Promise((next) => setTimeout(next, 50));
      }
    })();
    const search = () =>
      page.evaluate(async () => {
        const picture = await (await fetch('/photo.jpg')).blob();
        const from = performance.now();
        const card = await (globalThis as unknown as Page).findCard(picture);
        return { card, ms: performance.now() - from };
      });
    const first = await search();
    const again = await search();
    most.going = false;
    await watch;
    return { card: first.card, ms: first.ms, againMs: again.ms, beforeMb, mostMb: most.mb };
  } finally {
    await browser.close();
    server.close();
    await rm(work, { recursive: true, force: true });
  }
}

/** Memory in use of each page process of the browsers that this program started, MB; Linux only. */
async function renderersMb(): Promise<number[]> {
  const names = (await readdir('/proc').catch(() => [])).filter((name) => /^\d+$/.test(name));
  const told = await Promise.all(
    names.map(async (pid) => {
      const words = await readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => '');
      const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => '');
      const parent = Number(/PPid:\s+(\d+)/.exec(status)?.[1] ?? 0);
      return {
        pid: Number(pid),
        parent,
        isPage: words.includes('--type=renderer'),
        mb: Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024,
      };
    }),
  );
  const parents = new Map(told.map(({ pid, parent }) => [pid, parent]));
  const isOurs = (pid: number): boolean =>
    pid === process.pid || (parents.has(pid) && isOurs(parents.get(pid) as number));
  return [0, ...told.filter(({ pid, isPage }) => isPage && isOurs(pid)).map(({ mb }) => mb)];
}
