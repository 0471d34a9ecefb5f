import { z } from 'zod';

/**
 * A mark drawn on a photo, numbered as it is printed. Places are shares of the picture's width and height
 * (0–1, y down), so that a mark holds at every size the picture is shown in.
 */
export const photoMark = z.strictObject({
  id: z.string().min(1),
  number: z.number().int().min(1),
  kind: z.enum(['point', 'line', 'outline']),
  points: z.array(z.tuple([z.number().min(0).max(1), z.number().min(0).max(1)])).min(1),
  words: z.string().default(''),
  finding: z.string().optional(),
});
export type PhotoMark = z.infer<typeof photoMark>;

/** A photo of the piece: the bytes are kept under their SHA-256, this is what is known of them. */
export const photo = z.strictObject({
  id: z.string().min(1),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp', 'image/tiff', 'image/heic']),
  name: z.string(),
  bytes: z.number().int().positive(),
  widthPx: z.number().int().positive(),
  heightPx: z.number().int().positive(),
  /** As the camera wrote it, without a zone: `2026-04-02T10:15:00`. */
  takenAt: z.string().optional(),
  camera: z.string().optional(),
  caption: z.string().default(''),
  /** What the picture shows, for a reader who cannot see it. */
  alternative: z.string().default(''),
  part: z.string().optional(),
  asPlate: z.boolean().default(true),
  marks: z.array(photoMark).default([]),
});
export type Photo = z.infer<typeof photo>;
