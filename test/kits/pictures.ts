import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';

/** A picture of our own making in which no two columns are alike. */
export function gradient(width = 320, height = 200): Sharp {
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++)
      pixels.set([Math.round((255 * x) / width), Math.round((255 * y) / height), 96], (y * width + x) * 3);
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

/** The gradient in every kind that comes in. */
export const kinds: [string, () => Promise<Buffer>][] = [
  ['image/jpeg', () => gradient().jpeg().toBuffer()],
  ['image/png', () => gradient().png().toBuffer()],
  ['image/webp', () => gradient().webp().toBuffer()],
  ['image/tiff', () => gradient().tiff({ compression: 'deflate' }).toBuffer()],
  ['image/heic', () => readFile(new URL('../pictures/gradient.heic', import.meta.url))],
];

/** The SHA-256 of some bytes, in hex. */
export function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** A PNG of a few thousand bytes that unfolds into 40,000 × 40,000 pixels. */
export function decompressionBomb(): Buffer {
  const side = 40_000;
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header.set([1, 0, 0, 0, 0], 8);
  const rows = deflateSync(Buffer.alloc(4_000_000), { level: 9 });
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), body]);
  const framed = Buffer.alloc(8);
  framed.writeUInt32BE(body.length, 0);
  framed.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([framed.subarray(0, 4), named, framed.subarray(4)]);
}

/** The check sum of PNG (ISO/IEC 15948, annex D). */
function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return (rest ^ 0xffffffff) >>> 0;
}
