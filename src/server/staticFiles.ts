import { readdir, readFile, stat } from 'node:fs/promises';
import { extname, join } from 'node:path';
import type { Context } from 'hono';

const mediaTypes: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.txt': 'text/plain; charset=utf-8',
};

/**
 * Answers the built screens. Only names found in the folder at the start are ever read, so that no address can
 * reach out of it; every other address of the program's own gets the page, which finds its way by itself.
 */
export async function staticFiles(dir: string): Promise<(context: Context) => Promise<Response>> {
  const files = new Set(await namesUnder(dir));
  return async (context) => {
    const asked = context.req.path.slice(1);
    const isPage = !files.has(asked) && !asked.startsWith('api/') && extname(asked) === '';
    const name = isPage ? 'index.html' : asked;
    const bytes = files.has(name) ? await readFile(join(dir, name)).catch(() => undefined) : undefined;
    if (bytes === undefined) return context.text('There is nothing at this address.', 404);
    const isHashed = name.startsWith('assets/');
    return context.body(new Uint8Array(bytes), 200, {
      'content-type': mediaTypes[extname(name)] ?? 'application/octet-stream',
      'cache-control': isHashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    });
  };
}

/** The build of the screens in a folder, as `scripts/installable.mjs` wrote it; empty where they are none. */
export async function buildOfScreens(dir: string): Promise<string> {
  const text = await readFile(join(dir, 'build.json'), 'utf8').catch(() => '{}');
  return String((JSON.parse(text) as { build?: string }).build ?? '');
}

async function namesUnder(dir: string): Promise<string[]> {
  const names = await readdir(dir, { recursive: true }).catch(() => []);
  const kept = await Promise.all(
    names.map(async (name) => ((await stat(join(dir, name))).isFile() ? [name.replaceAll('\\', '/')] : [])),
  );
  return kept.flat();
}
