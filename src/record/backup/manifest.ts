import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { canonicalJson } from '../canonicalJson.ts';

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** A path within a data folder: parted by strokes, and nothing that leads out of it. */
const innerPath = z
  .string()
  .max(1000)
  .refine(
    (path) =>
      path.split('/').every((part) => part !== '' && part !== '.' && part !== '..') && !/[\\\0:]/.test(path),
    'not a path within a data folder',
  );
const keptFile = z.strictObject({ path: innerPath, sha256, bytes: z.number().int().nonnegative() });

const body = z.strictObject({
  kind: z.literal('underside-backup'),
  format: z.literal(1),
  recordId: z.string(),
  /** When the copy was begun: every act that was answered for before this moment is in it. */
  madeAt: z.iso.datetime({ offset: true }),
  madeBy: z.enum(['itself', 'hand']),
  programVersion: z.string(),
  /** The acts in the copy, and the hash over where every device's chain stands. */
  count: z.number().int().nonnegative(),
  head: z.string(),
  database: keptFile,
  files: z.array(keptFile),
  /** What the record names and was not there to be copied; and what did not hold in the record itself. */
  missing: z.array(z.strictObject({ path: z.string(), message: z.string() })),
  recordFaults: z.array(z.strictObject({ code: z.string(), path: z.string(), message: z.string() })),
});

/** What one dated copy holds, in every file's hash. */
export type BackupManifest = z.infer<typeof body>;
export type KeptFile = z.infer<typeof keptFile>;

export const manifestName = 'manifest.json';

/** The text of a manifest, sealed with a hash over all of it. */
export function manifestText(manifest: BackupManifest): string {
  // Parsed first: its keys are always written in one order.
  const ordered = body.parse(manifest);
  return `${JSON.stringify({ ...ordered, seal: sealOf(ordered) }, null, 2)}\n`;
}

/** The manifest of a dated copy, or undefined where it is not there, not whole, or was changed by so much as a byte. */
export async function readManifest(folder: string): Promise<BackupManifest | undefined> {
  const text = await readFile(join(folder, manifestName), 'utf8').catch(() => undefined);
  if (text === undefined) return undefined;
  try {
    const { seal: _seal, ...rest } = JSON.parse(text);
    const read = body.safeParse(rest);
    return read.success && manifestText(read.data) === text ? read.data : undefined;
  } catch {
    return undefined;
  }
}

function sealOf(manifest: BackupManifest): string {
  return createHash('sha256').update(canonicalJson(manifest)).digest('hex');
}
