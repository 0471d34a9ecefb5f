import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { pictureMemory } from './pictureMemory.ts';

const made = { dir: '' };
beforeAll(async () => {
  made.dir = await mkdtemp(join(tmpdir(), 'underside-memory-'));
});
afterAll(() => rm(made.dir, { recursive: true, force: true }));

const plain = () => sharp({ create: { width: 200, height: 100, channels: 3, background: '#865' } });

it.each([
  ['a plain PNG', 'image/png', () => plain().png(), 0],
  ['an interlaced PNG', 'image/png', () => plain().png({ progressive: true }), 60_000],
  ['a plain JPEG', 'image/jpeg', () => plain().jpeg(), 0],
  ['a progressive JPEG', 'image/jpeg', () => plain().jpeg({ progressive: true }), 120_000],
  ['a WebP', 'image/webp', () => plain().webp(), 60_000],
  ['a TIFF', 'image/tiff', () => plain().tiff(), 60_000],
] as const)('%s', async (what, mediaType, make, bytes) => {
  const path = join(made.dir, what);
  await writeFile(path, await make().toBuffer());
  expect(await pictureMemory(path, mediaType)).toBe(bytes);
});

it('tells nothing of a file that is none, and waits for a HEIC', async () => {
  const path = join(made.dir, 'none');
  await writeFile(path, 'no picture');
  expect(await pictureMemory(path, 'image/png')).toBe(0);
  expect(await pictureMemory(path, 'image/heic')).toBe(Number.POSITIVE_INFINITY);
});
