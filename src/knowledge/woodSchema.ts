import { z } from 'zod';
import { id, sentence } from './entryWords.ts';
import { basis, figureOrText } from './figureSchema.ts';
import { plainFigure, whoseWord } from './plainFigure.ts';
import { standardTerm } from './standardTermSchema.ts';

/** How far a figure of the movement of wood was read: see the head of woods.yaml. */
const howRead = z.enum(['handbook', 'transcription', 'trade page', 'memory']);
const howReadBoth = z.union([howRead, z.strictObject({ radial: howRead, tangential: howRead })]);
const radialIsLess =
  'a wood moves less across its rings than along them: look whether the two figures are exchanged';

/** A wood: how much it moves across the grain, by its total shrinkage, by its coefficient, or by both. */
export const wood = z
  .strictObject({
    id,
    name: z.string().min(3),
    botanical: z
      .string()
      .regex(/^[A-Z][a-z]+ /, 'a botanical name is written "Quercus alba" or "Quercus spp."'),
    botanicalRead: howRead.default('memory'),
    otherNames: z.array(z.string()).default([]),
    aat: standardTerm.optional(),
    /** From green to dry, in percent of the green width. */
    shrinkage: z
      .strictObject({
        radialPercent: z.number().positive().max(20),
        tangentialPercent: z.number().positive().max(20),
        source: id,
        at: z.string().optional(),
        read: howReadBoth,
      })
      .refine((figures) => figures.radialPercent < figures.tangentialPercent, radialIsLess)
      .optional(),
    /** Share of the width at 10 % for each percent of moisture. */
    coefficient: z
      .strictObject({
        radial: z.number().positive().max(0.01).optional(),
        tangential: z.number().positive().max(0.01),
        source: id,
        at: z.string().optional(),
        read: howReadBoth,
      })
      .refine((figures) => (figures.radial ?? 0) < figures.tangential, radialIsLess)
      .optional(),
    /** The moisture at which the wood begins to move, where it is not the usual one. */
    fibreSaturationPercent: z.number().min(15).max(35).optional(),
    note: sentence.optional(),
  })
  .refine(
    (entry) => entry.shrinkage !== undefined || entry.coefficient !== undefined,
    'a wood has a shrinkage, a coefficient or both',
  );
export type Wood = z.infer<typeof wood>;

const spreadFields = { mean: z.number().positive(), sd: z.number().positive() };
const spread = plainFigure(spreadFields);
const one = plainFigure({ value: z.number().positive() });

/** Moistures and spreads that hold for every wood. */
export const woodMovement = z.strictObject({
  /** The moisture below which wood moves, where the wood does not say otherwise. */
  fibreSaturationPercent: one,
  /** Between which moistures a coefficient is meant to be used. */
  coefficientHolds: z.strictObject({ fromPercent: z.number(), toPercent: z.number(), ...whoseWord }),
  /** Standard deviation of one board against the figure of its wood, as a share of it. */
  ownVariationShare: one,
  /** Standard deviation of a wood’s moisture against the equation, in percent of moisture. */
  equilibriumSdPercent: one,
  /** Moisture at making: of wood dried in the air, long ago, and of wood dried in a kiln. */
  atMaking: z.strictObject({ old: spread, recent: spread }),
  /** Moisture of furniture indoors today, by climate. */
  indoors: z.array(plainFigure({ id, name: z.string(), ...spreadFields })).min(1),
  defaultIndoors: id,
  /** How far from round a maker left it: standard deviation as a share of the diameter. */
  madeRoundShare: one,
  /** Of 100 round parts, how many are out of round for some other reason: made so, cut, warped, mended. */
  otherCauses: figureOrText,
  /** Those: standard deviation as a share of the diameter. */
  otherCausesShare: one,
  basis,
  sources: z.array(id).default([]),
});
export type WoodMovement = z.infer<typeof woodMovement>;
