import { z } from 'zod';
import { id, sentence } from './entryWords.ts';
import { readSignPiece } from './signPieces.ts';

/** How wide and high the sheet of a sign’s drawing is; x runs to the right, y down. */
export const signDrawingBox = { width: 100, height: 70 } as const;

/** How a stroke is drawn; every line has the same weight, and a thin one is grain or what lies behind. */
export const strokeKind = z.enum([
  'wood',
  'end',
  'pale',
  'dark',
  'gap',
  'metal',
  'dirt',
  'worn',
  'line',
  'thin',
  'hidden',
  'mark',
]);
export type StrokeKind = z.infer<typeof strokeKind>;

const stroke = z.strictObject({
  as: strokeKind,
  d: z
    .string()
    .regex(
      /^[MLHVCSQTAZmlhvcsqtaz0-9 .,\s-]+$/,
      'a stroke is SVG path data: letters, numbers and spaces, as "M 10 20 L 30 40"',
    ),
});
export type Stroke = z.infer<typeof stroke>;

/** A piece of the common stock, on one line: its name, perhaps a face, its numbers. */
const piece = z.string().superRefine((line, context) => {
  const read = readSignPiece(line);
  if ('wrong' in read) context.addIssue({ code: 'custom', message: read.wrong });
});

const place = z.tuple([z.number(), z.number()]);

/** A word or two on the sheet, centered on a place, with a line to what they name. */
const label = z.strictObject({ words: z.string().min(1), at: place, to: place.optional() });
export type DrawingLabel = z.infer<typeof label>;

/**
 * A line drawing of how a sign looks: strokes in the order they are laid down, each over those before it.
 *
 * wood, end, pale, dark, metal: a face of wood, end grain, fresh wood, darkened wood or metal, outlined; gap: a hole or shadow;
 * dirt, worn: a darker or paler place on a face, without outline; line: an edge; thin: grain and tool marks; hidden: dashed, what
 * lies beneath; mark: what to look at.
 */
export const signDrawing = z.strictObject({
  id,
  /** The signs it shows: two where a drawing sets one beside the other. */
  signs: z.array(id).min(1),
  title: z.string().min(3),
  /** What is drawn, for who can’t see it and as its caption. */
  what: sentence,
  strokes: z.array(z.union([stroke, piece])).min(1),
  labels: z.array(label).optional(),
});
export type SignDrawing = z.infer<typeof signDrawing>;
