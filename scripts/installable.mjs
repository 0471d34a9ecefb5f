/**
 * What makes the screens an app that can be installed and opened without a network: icons in the sizes that devices ask
 * for, and the worker that keeps the screens on the device, with the list of what it keeps.
 */
import { createHash } from 'node:crypto';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Icons, by the name that manifest and page give them: side in pixels, and how much room the mask of a device may cut. */
const icons = [
  { name: 'icon-180.png', side: 180, marginShare: 0 },
  { name: 'icon-192.png', side: 192, marginShare: 0 },
  { name: 'icon-512.png', side: 512, marginShare: 0 },
  { name: 'icon-mask-512.png', side: 512, marginShare: 0.12 },
];

/** The icon's own paper, laid behind it where a device cuts a shape of its own. */
const paper = '#f6f1e7';

/** What is kept on the device only after all else: large, and needed by one tool of the bench. */
const isForLater = (path) => /^\/assets\/visionWorker-/.test(path);

/**
 * Completes the folder of built screens.
 *
 * @param {string} dir   the built screens, whole but for this
 * @param {string} root  the checkout
 * @returns {Promise<string>} the build: one hash over all that is kept, the worker itself included
 */
export async function makeInstallable(dir, root) {
  await drawIcons(dir);
  const files = await filesToKeep(dir);
  const listed = {
    now: files.filter(([path]) => !isForLater(path)),
    later: files.filter(([path]) => isForLater(path)),
  };
  const draft = await bundleWorker(root, { build: '', ...listed });
  const build = createHash('sha256').update(draft).digest('hex').slice(0, 16);
  await writeFile(join(dir, 'sw.js'), await bundleWorker(root, { build, ...listed }));
  await writeFile(join(dir, 'build.json'), `${JSON.stringify({ build })}\n`);
  return build;
}

async function drawIcons(dir) {
  const { default: sharp } = await import('sharp');
  const drawing = await readFile(join(dir, 'icon.svg'));
  for (const { name, side, marginShare } of icons) {
    const margin = Math.round(side * marginShare);
    const drawn = await sharp(drawing, { density: 72 * Math.ceil(side / 64) })
      .resize(side - 2 * margin, side - 2 * margin)
      .png()
      .toBuffer();
    await sharp({ create: { width: side, height: side, channels: 4, background: paper } })
      .composite([{ input: drawn, left: margin, top: margin }])
      .png()
      .toFile(join(dir, name));
  }
}

/** Every file of the screens with the SHA-256 of its bytes, by its address. */
async function filesToKeep(dir) {
  const names = (await readdir(dir, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name));
  const listed = names.map(async (file) => {
    const hash = createHash('sha256').update(await readFile(file));
    return [file.slice(dir.length).replaceAll('\\', '/'), hash.digest('hex')];
  });
  return (await Promise.all(listed)).sort(([a], [b]) => (a < b ? -1 : 1));
}

async function bundleWorker(root, kept) {
  const esbuild = await import('esbuild');
  const { outputFiles } = await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['src/web/offline/worker/serviceWorker.ts'],
    bundle: true,
    write: false,
    minify: true,
    platform: 'browser',
    target: 'es2022',
    format: 'iife',
    define: { keptOnDevice: JSON.stringify(kept) },
    logLevel: 'warning',
  });
  return outputFiles[0].text;
}
