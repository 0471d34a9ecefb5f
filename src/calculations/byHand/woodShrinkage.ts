import { z } from 'zod';
import { coefficientFromShrinkage } from '../../wood/coefficient.ts';
import { shrinkageAt } from '../../wood/movement.ts';
import { defineCalculation } from '../define.ts';

const shrinkageFields = {
  /** Green to dry, in percent of the green width. */
  shrinkagePercent: z.number().positive().max(50),
  fibreSaturationPercent: z.number().min(15).max(40).default(30),
};

/** `wood.shrinkageAt`: see its own fields. */
export const woodShrinkageAt = defineCalculation({
  id: 'wood.shrinkageAt',
  answers: 'How much of its green width has a wood lost at this moisture?',
  method:
    'S_M = S · (F − M)/F, with S the shrinkage from green to dry and F the fiber saturation, 30 where nothing else is given; above F nothing is lost.',
  source: 'Wood Handbook (FPL-GTR-190, 2010), chapter 4.',
  needsKnowledge: false,
  input: z.strictObject({ ...shrinkageFields, moisturePercent: z.number().min(0).max(300) }),
  output: z.strictObject({ shrinkagePercent: z.number() }),
  example: { shrinkagePercent: 9.9, moisturePercent: 8, fibreSaturationPercent: 30 },
  run: ({ shrinkagePercent, fibreSaturationPercent, moisturePercent }) => ({
    ok: true,
    output: { shrinkagePercent: shrinkageAt(shrinkagePercent, fibreSaturationPercent, moisturePercent) },
  }),
});

/** `wood.coefficientFromShrinkage`: see its own fields. */
export const woodCoefficientFromShrinkage = defineCalculation({
  id: 'wood.coefficientFromShrinkage',
  answers: 'Which coefficient of movement follows from a wood’s shrinkage from green to dry?',
  method:
    'C = S / (100 F − S (F − M)), with M the moisture whose width C refers to: 10 in the Wood Handbook. Agrees to 0.00001 with 34 of ' +
    'the 37 woods whose two figures were both read; the other three carry the coefficient of a neighbor.',
  source:
    'Ours, inferred from tables 4-3 and 13-5 of the Wood Handbook (FPL-GTR-190, 2010), which print both.',
  needsKnowledge: false,
  input: z.strictObject({ ...shrinkageFields, baseMoisturePercent: z.number().min(0).max(30).default(10) }),
  output: z.strictObject({ coefficient: z.number() }),
  example: { shrinkagePercent: 7.8, fibreSaturationPercent: 30, baseMoisturePercent: 10 },
  run: ({ shrinkagePercent, fibreSaturationPercent, baseMoisturePercent }) => ({
    ok: true,
    output: {
      coefficient: coefficientFromShrinkage(shrinkagePercent, fibreSaturationPercent, baseMoisturePercent),
    },
  }),
});
