import { z } from 'zod';
import { markKind } from '../knowledge/measurementSchema.ts';

const ratio = z.number().positive();
const mm = z.number().min(0).max(100_000);
const likelihood = z.number().positive();

/**
 * What an instrument measured, as far as it speaks of signs. `from` is the calculation that measured it; the fields carry the
 * names they have in its input and output.
 */
export const measurement = z.discriminatedUnion('from', [
  /** Two outlines laid on each other with their sizes held; left free, they say nothing of how they were worked. */
  z.strictObject({ from: z.literal('photo.twins'), rmsMm: mm, noiseMm: mm, sigmaMm: mm }),
  /** Of the comparison: how much darker what light reached is than what was covered, in L of CIELAB. */
  z.strictObject({
    from: z.literal('photo.colour-balance'),
    surface: z.enum(['pale-bare', 'other']),
    darkerByL: z.number().min(-200).max(200),
    sigmaL: z.number().min(0).max(200),
  }),
  /** Of the score: where wear is, how well it agrees with touch, and whether a face goes against use. */
  z.strictObject({
    from: z.literal('wear.contact'),
    worn: z.enum(['nowhere', 'everywhere', 'in-places']),
    auc: z.number().min(0).max(1).nullable(),
    aucSigma: z.number().min(0).max(10).nullable(),
    isContrary: z.boolean().default(false),
    /** Kinds of the parts that were painted; left out, signs of any part are named. */
    kinds: z.array(z.string()).optional(),
  }),
  /** Of every kind of mark, in proportion. */
  z.strictObject({ from: z.literal('photo.toolmarks'), likelihoods: z.record(markKind, likelihood) }),
  z.strictObject({
    from: z.literal('photo.grain-match'),
    /** Across what the grain was followed. */
    across: z.enum(['cuff', 'leg', 'veneer', 'other']),
    tells: z.boolean(),
    likelihoodRatio: ratio,
  }),
  z.strictObject({
    from: z.literal('wood.roundness'),
    part: z.enum(['top', 'turning']).default('top'),
    likelihoodRatio: ratio,
  }),
  z.strictObject({
    from: z.literal('wood.panel-loss'),
    part: z.enum(['panel', 'drawer-bottom', 'round-top', 'board']).default('board'),
    likelihoodRatio: ratio.nullable(),
  }),
  /** Of the seats: how much wider the armchairs’ are than the side chairs’. */
  z.strictObject({
    from: z.literal('sets.likeness'),
    differenceMm: z.number().min(-10_000).max(10_000),
    sigmaMm: mm,
    handMm: mm.default(3),
  }),
]);
export type Measurement = z.infer<typeof measurement>;

/** What one instrument measured. */
export type MeasurementFrom<Id extends Measurement['from']> = Extract<Measurement, { from: Id }>;
