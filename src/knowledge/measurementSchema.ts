import { z } from 'zod';
import { id, sentence } from './entryWords.ts';
import { basis } from './figureSchema.ts';
import { plainFigure } from './plainFigure.ts';

/** The kinds of mark that `photo.toolmarks` tells apart. */
export const markKind = z.enum([
  'hand-planed',
  'rotary-planer',
  'straight-saw',
  'circular-saw',
  'band-saw',
  'sliced',
]);

const signs = z.array(id);
const left = plainFigure({ medianMm: z.number().positive(), factor: z.number().gt(1) });
const spread = plainFigure({ mean: z.number(), sd: z.number().positive() });
const positive = plainFigure({ value: z.number().positive() });
const share = plainFigure({ value: z.number().gt(0).lt(1) });
/** The most that a measurement may speak for one side, and so at least 1. */
const mostRatio = plainFigure({ value: z.number().gt(1) });
const acrossGrain = z.strictObject({ signs, present: z.enum(['one-piece', 'two-pieces']) });

/** What measurements say of signs: which signs each speaks of, and the figures its likelihoods rest on. */
export const measurements = z.strictObject({
  outlines: z.strictObject({
    signs,
    leaves: z.strictObject({ machine: left, template: left, eye: left }),
    templateShare: share,
    mostRatio,
    basis,
  }),
  darkening: z.strictObject({
    signs,
    aged: spread,
    alike: spread,
    within: plainFigure({ from: z.number(), to: z.number() }),
    mostRatio,
    basis,
  }),
  wear: z.strictObject({
    'where-used': signs,
    'where-not-used': signs,
    natural: spread,
    imitated: spread,
    mostRatio,
    basis,
  }),
  'tool-marks': z.strictObject({
    signs: z.array(
      z.strictObject({ sign: id, kinds: z.array(markKind).min(1), besides: sentence.optional() }),
    ),
    basis,
  }),
  grain: z.strictObject({
    across: z.strictObject({ cuff: acrossGrain, leg: acrossGrain, veneer: acrossGrain, other: acrossGrain }),
    basis,
  }),
  roundness: z.strictObject({ top: signs, turning: signs, basis }),
  panel: z.strictObject({ panel: signs, 'drawer-bottom': signs, 'round-top': signs, board: signs, basis }),
  'seat-width': z.strictObject({ signs, alteration: id, widerMm: positive, mostShare: share, basis }),
  scale: z.strictObject({
    cardPx: positive,
    cardMm: positive,
    ruleMm: positive,
    markPx: positive,
    tracedMm: positive,
    lensPercent: positive,
    basis,
  }),
});
export type Measurements = z.infer<typeof measurements>;
