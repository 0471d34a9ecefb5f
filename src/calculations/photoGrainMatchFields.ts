import { z } from 'zod';
import { pictureFile, pictureRegion } from './pictureFields.ts';

const coordinate = z.number().min(0).max(100_000);

/** A rectangle, or the corners of a shape in order. */
const strip = z.union([
  pictureRegion,
  z.strictObject({
    points: z
      .array(z.tuple([coordinate, coordinate]))
      .min(3)
      .max(100),
  }),
]);

/** What `photo.grain-match` takes. */
export const matchFields = {
  file: pictureFile,
  /** Wood on one side of the band, clear of it and of the part’s edges. */
  a: strip,
  /** Wood on the other side. */
  b: strip,
  /** The way the part runs, from the x axis towards y, which points down: 90 is upright. */
  directionDeg: z.number().min(-360).max(360),
  /** True where paint covers the wood: no ratio is given then. */
  painted: z.boolean().default(false),
  mmPerPx: z.number().positive().max(1000).optional(),
};

const side = z.strictObject({
  /** Along the grain, −90 to 90 from the x axis towards y. */
  grainDeg: z.number(),
  /** How well the strip’s near half foretells its far half, −1 to 1. */
  agreement: z.number(),
  /** Spread of lightness (0–100) across the grain. */
  contrast: z.number(),
});

/** What `photo.grain-match` gives. */
export const matchOutput = {
  correlation: z.number(),
  shiftPx: z.number(),
  shiftSigmaPx: z.number(),
  shiftMm: z.number().optional(),
  shiftSigmaMm: z.number().optional(),
  /** One piece : two. */
  likelihoodRatio: z.number(),
  decibans: z.number(),
  sigmaDecibans: z.number(),
  /** The ratio is held between these. */
  lowest: z.number(),
  highest: z.number(),
  null: z.strictObject({
    photoStrips: z.number().int(),
    photoReached: z.number().int(),
    photoTypical: z.number(),
    photoHigh: z.number(),
    shippedPairs: z.number().int(),
    /** The share of the shipped pairs of two pieces that fit as well. */
    shippedReached: z.number(),
    onePiecePairs: z.number().int(),
    how: z.string(),
  }),
  tells: z.boolean(),
  says: z.string(),
  stretch: z.number(),
  factor: z.number().int(),
  a: side,
  b: side,
  /** Both profiles at the band’s middle, evened out, to be drawn one above the other. */
  profiles: z.strictObject({ a: z.array(z.number()), b: z.array(z.number()) }),
};
