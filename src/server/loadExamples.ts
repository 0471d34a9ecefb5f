import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { parse } from 'yaml';
import { z } from 'zod';
import { sniffMediaType } from '../photo/file/sniffMediaType.ts';
import type { Json } from '../piece/event.ts';
import { photo, photoMark } from '../piece/photo.ts';
import { piece } from '../piece/piece.ts';
import type { BuiltInPhoto } from '../record/builtInPhoto.ts';

/** A plate as plates.yaml names it; what its bytes say is read from them. */
const plate = z.strictObject({
  id: z.string().min(1),
  file: z.string().regex(/^[a-z0-9-]+\.(jpg|png|webp)$/),
  caption: z.string().default(''),
  alternative: z.string().min(1),
  part: z.string().optional(),
  asPlate: z.boolean().default(true),
  marks: z.array(photoMark).default([]),
});
const platesFile = z.union([
  z.array(plate),
  z.strictObject({ plates: z.array(plate) }).transform((file) => file.plates),
]);

/** The worked examples: their documents by id, their photos by hash, and plates that are named and not there. */
export type Examples = { pieces: Map<string, Json>; photos: Map<string, BuiltInPhoto>; missing: string[] };

/**
 * Reads the worked examples: one folder each with piece.yaml, plates.yaml where it has plates, and their pictures.
 *
 * @param dir  the folder they were built into; none is no fault
 * @throws when a file does not fit its schema: the examples come with the program, so that is a slip in it
 */
export async function loadExamples(dir: string): Promise<Examples> {
  const found: Examples = { pieces: new Map(), photos: new Map(), missing: [] };
  const folders = await readdir(dir, { withFileTypes: true }).catch(() => []);
  for (const folder of folders
    .filter((one) => one.isDirectory())
    .map((one) => one.name)
    .sort()) {
    const text = await readFile(join(dir, folder, 'piece.yaml'), 'utf8').catch(() => undefined);
    if (text === undefined) continue;
    const photos = await loadPlates(join(dir, folder), found);
    const document = parse(text);
    const read = piece.parse({
      ...document,
      example: true,
      photos,
      plateOrder: document.plateOrder ?? Object.keys(photos),
    });
    found.pieces.set(read.id, JSON.parse(JSON.stringify(read)));
  }
  return found;
}

async function loadPlates(dir: string, found: Examples): Promise<Record<string, unknown>> {
  const text = await readFile(join(dir, 'plates.yaml'), 'utf8').catch(() => undefined);
  if (text === undefined) return {};
  const photos: [string, unknown][] = [];
  for (const { file, ...one } of platesFile.parse(parse(text))) {
    const path = join(dir, file);
    const bytes = await readFile(path).catch(() => undefined);
    const mediaType = bytes && sniffMediaType(bytes);
    if (bytes === undefined || mediaType === undefined) {
      found.missing.push(path);
      continue;
    }
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const { width, height } = await sharp(bytes).metadata();
    found.photos.set(sha256, { path, mediaType });
    photos.push([
      one.id,
      photo.parse({
        ...one,
        sha256,
        mediaType,
        name: file,
        bytes: bytes.byteLength,
        widthPx: width,
        heightPx: height,
      }),
    ]);
  }
  return Object.fromEntries(photos);
}
