import { createRequire } from 'node:module';
import { Hono } from 'hono';
import sharp from 'sharp';
import { type Homography, mapped } from '../src/photo/geometry/homography.ts';
import type { Point } from '../src/photo/picture.ts';
import { answerWithPolicy } from '../src/server/guard.ts';
import { type CardFound, findCard } from '../src/web/bench/vision/findCard.ts';
import { cutTile, type GreyPicture } from '../src/web/bench/vision/greyPicture.ts';
import { readyOpenCv } from '../src/web/bench/vision/openCv.ts';
import { photographedCard } from '../test/kits/photographedCard.ts';
import { printedCard } from '../test/kits/printedCard.ts';
import { findInBrowser } from './visionBrowser.ts';
import { comparePeers, type PeerCv } from './visionPeers.ts';

/**
 * What finding the scale card costs in pictures of 12, 24 and 48 megapixels, in Node and in Chromium; and our rectification and
 * ellipse beside those of a general vision library, in the same run. Use: npx tsx bench/vision.ts [--no-browser]
 */
async function main(): Promise<void> {
  const { cv } = await readyOpenCv(createRequire(import.meta.url)('@techstark/opencv-js'));
  const heapMb = () => (cv as unknown as { HEAP8: Int8Array }).HEAP8.length / 2 ** 20;
  const card = await printedCard('a4', 300);
  const small = photographedCard(card, { widthPx: 2000, heightPx: 1500, toPicture: view, seed: 5 });
  console.log(`Node ${process.version}; the card drawn by ${card.by}, photographed at 3 MP and enlarged`);
  for (const times of [2, 2.83, 4]) {
    const picture = await enlarged(small, times);
    const from = performance.now();
    const found = findCard(cv, picture);
    const ms = performance.now() - from;
    console.log(
      `${megapixels(picture)} MP: found in ${ms.toFixed(0)} ms, ${offOf(found, times, picture).toFixed(2)} px off in the mean; library ${heapMb().toFixed(0)} MB, process ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`,
    );
  }
  const whole = { leftPx: 0, topPx: 0, widthPx: 2000, heightPx: 1500 };
  const peers = comparePeers(cv as unknown as PeerCv, cutTile(small, whole, 4000), view, 51);
  console.log('\nours, ms | theirs, ms | apart');
  for (const { what, oursMs, theirsMs, apart } of peers)
    console.log(`${oursMs.toFixed(2).padStart(9)} | ${theirsMs.toFixed(2).padStart(9)} | ${what}: ${apart}`);
  if (process.argv.includes('--no-browser')) return;
  for (const times of [2.83, 4]) {
    const picture = await enlarged(small, times);
    const jpeg = await sharp(picture.pixels, {
      raw: { width: picture.widthPx, height: picture.heightPx, channels: 1 },
    })
      .toColourspace('srgb')
      .jpeg({ quality: 90 })
      .toBuffer();
    const cost = await findInBrowser(jpeg, policyOf);
    console.log(
      `Chromium, ${megapixels(picture)} MP JPEG: ${cost.ms.toFixed(0)} ms the first time, ${cost.againMs.toFixed(0)} ms the second; ${offOf(cost.card, times, picture).toFixed(2)} px off; page process ${cost.beforeMb.toFixed(0)} MB before, ${cost.mostMb.toFixed(0)} MB at most`,
    );
  }
}

const view: Homography = [
  [4.6, -0.9, 330],
  [0.8, 4.4, 120],
  [0.0004, 0.0003, 1],
];

async function enlarged({ widthPx, heightPx, pixels }: GreyPicture, times: number): Promise<GreyPicture> {
  const size = { width: Math.round(widthPx * times), height: Math.round(heightPx * times) };
  const { data } = await sharp(pixels, { raw: { width: widthPx, height: heightPx, channels: 1 } })
    .resize({ ...size, kernel: 'cubic', fit: 'fill' })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { widthPx: size.width, heightPx: size.height, pixels: new Uint8Array(data) };
}

function offOf(found: CardFound, times: number, { widthPx }: GreyPicture): number {
  if (!found.found) throw new Error(`${found.message} (${times}, ${widthPx})`);
  const off = found.image.map(([x, y], i) => {
    const [u, v] = mapped(view, found.world[i] as Point).point;
    return Math.hypot(x - ((u + 0.5) * times - 0.5), y - ((v + 0.5) * times - 0.5));
  });
  return off.reduce((sum, each) => sum + each / off.length, 0);
}

/** The headers that the server puts on this path. */
async function policyOf(path: string): Promise<Record<string, string>> {
  const app = new Hono().use(answerWithPolicy).get('*', (context) => context.body(''));
  return Object.fromEntries((await app.request(path)).headers);
}

function megapixels({ widthPx, heightPx }: GreyPicture): string {
  return ((widthPx * heightPx) / 1e6).toFixed(0);
}

await main();
