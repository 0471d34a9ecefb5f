/** Finds a Chromium for the browser tests: the one named, the system's own, or the one that comes inside an npm package. */
import { spawn } from 'node:child_process';
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { chmod, mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import { createBrotliDecompress } from 'node:zlib';

const root = fileURLToPath(new URL('..', import.meta.url));

const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/**
 * @param {NodeJS.ProcessEnv} env  CHROMIUM_PATH names one; UNDERSIDE_BUNDLED_CHROMIUM=1 passes over the system's
 * @returns {Promise<{ executable: string, env: Record<string, string> }>} the program, and what it needs in its environment
 */
export async function findChromium(env) {
  if (env.CHROMIUM_PATH) return { executable: env.CHROMIUM_PATH, env: {} };
  const found = env.UNDERSIDE_BUNDLED_CHROMIUM ? undefined : usualPlaces.find((place) => existsSync(place));
  if (found !== undefined) return { executable: found, env: {} };
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('No Chromium was found: install Chromium or Chrome, or name one in CHROMIUM_PATH.');
  }
  return unpackBundled();
}

/** The package carries the program, the system libraries it needs and fonts, each packed by brotli. */
async function unpackBundled() {
  const packed = join(
    dirname(createRequire(join(root, 'package.json')).resolve('@sparticuz/chromium')),
    '..',
    '..',
    'bin',
  );
  const place = join(root, '.cache', 'chromium');
  if (!existsSync(place)) {
    const fresh = `${place}.${process.pid}`;
    await mkdir(fresh, { recursive: true });
    await pipeline(
      createReadStream(join(packed, 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(join(fresh, 'chromium')),
    );
    await chmod(join(fresh, 'chromium'), 0o755);
    for (const name of ['al2023', 'fonts', 'swiftshader'])
      await unpackTar(join(packed, `${name}.tar.br`), name === 'swiftshader' ? fresh : join(fresh, name));
    await writeFile(join(fresh, 'fonts.conf'), fontList(join(place, 'fonts')));
    await rename(fresh, place).catch(() => rm(fresh, { recursive: true }));
  }
  return {
    executable: join(place, 'chromium'),
    env: { LD_LIBRARY_PATH: join(place, 'al2023', 'lib'), FONTCONFIG_FILE: join(place, 'fonts.conf') },
  };
}

function fontList(folder) {
  return `<?xml version="1.0"?>\n<fontconfig><dir>${folder}</dir><dir>/usr/share/fonts</dir><cachedir>${folder}/cache</cachedir></fontconfig>\n`;
}

async function unpackTar(file, into) {
  await mkdir(into, { recursive: true });
  const plain = join(into, 'packed.tar');
  await pipeline(createReadStream(file), createBrotliDecompress(), createWriteStream(plain));
  await new Promise((resolve, reject) => {
    const tar = spawn('tar', ['-xf', plain, '-C', into], { stdio: ['ignore', 'inherit', 'inherit'] });
    tar.once('error', reject);
    tar.once('close', (code) =>
      code === 0 ? resolve() : reject(new Error(`${file} could not be unpacked.`)),
    );
  });
  await rm(plain);
}
