import { createHash } from 'node:crypto';
import { z } from 'zod';
import { canonicalJson } from '../canonicalJson.ts';

/**
 * The names that stand in the file of a piece, and the most bytes each may hold. Nothing else comes in: a name is
 * matched whole, so that none can lead out of the folder it is unpacked into.
 */
const places: readonly { name: RegExp; mostBytes: number }[] = [
  { name: /^index\.html$/, mostBytes: 64_000_000 },
  { name: /^acts\.jsonl$/, mostBytes: 256_000_000 },
  { name: /^own-knowledge\.json$/, mostBytes: 16_000_000 },
  { name: /^photos\/[0-9a-f]{64}\.(jpg|png|webp|tif|heic)$/, mostBytes: 200_000_000 },
  { name: /^shown\/[0-9a-f]{64}\.jpg$/, mostBytes: 50_000_000 },
  { name: /^issued\/[1-9]\d{0,4}\/[a-z][a-z0-9-]{0,40}\.(pdf|json)$/, mostBytes: 400_000_000 },
];

export const manifestName = 'manifest.json';
export const mostManifestBytes = 16_000_000;

/** The most bytes that stand under a name, or undefined where nothing of a piece has it. */
export function mostBytesOf(name: string): number | undefined {
  return places.find((place) => place.name.test(name))?.mostBytes;
}

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const body = z.strictObject({
  kind: z.literal('underside-piece'),
  format: z.literal(1),
  piece: z.string(),
  title: z.string(),
  recordId: z.string(),
  acts: z.number().int().positive(),
  madeAt: z.iso.datetime({ offset: true }),
  programVersion: z.string(),
  knowledgeVersion: z.string(),
  files: z
    .array(
      z.strictObject({
        path: z.string().refine((path) => mostBytesOf(path) !== undefined, 'no file of a piece'),
        sha256,
        bytes: z.number().int().nonnegative(),
      }),
    )
    .max(20_000),
  /** Photos that the piece names and that were not there to be taken along. */
  missing: z.array(sha256),
});

/** What the file of a piece holds, every file by its hash. */
export type PieceFileManifest = z.infer<typeof body>;

/** The text of a manifest, sealed with a hash over all of it. */
export function pieceManifestText(manifest: PieceFileManifest): string {
  // Parsed first: its keys are always written in one order.
  const ordered = body.parse(manifest);
  return `${JSON.stringify({ ...ordered, seal: sealOf(ordered) }, null, 2)}\n`;
}

/** The manifest read from its text, or undefined where it is not one or was changed by so much as a byte. */
export function readPieceManifest(text: string): PieceFileManifest | undefined {
  try {
    const { seal: _seal, ...rest } = JSON.parse(text);
    const read = body.safeParse(rest);
    return read.success && pieceManifestText(read.data) === text ? read.data : undefined;
  } catch {
    return undefined;
  }
}

function sealOf(manifest: PieceFileManifest): string {
  return createHash('sha256').update(canonicalJson(manifest)).digest('hex');
}
