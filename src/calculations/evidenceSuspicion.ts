import { z } from 'zod';
import { caseToWeigh } from '../evidence/caseToWeigh.ts';
import { suspicion } from '../weighing/suspicion.ts';
import { defineCalculation } from './define.ts';

/** `evidence.suspicion`: see its own fields. */
export const evidenceSuspicion = defineCalculation({
  id: 'evidence.suspicion',
  answers:
    'Was one alteration made to this piece, what would settle it, and what would each answer make of it?',
  method:
    'The model of evidence.weigh, summed as the case stands and with the alteration held to have happened. Bits say by how much looking is ' +
    'expected to lower the doubt over this alteration alone (mutual information), most to the minute first, at most twelve looks. For ' +
    'each the case is weighed anew with the sign found and with it looked for and not found. Best figures, no redraws.',
  source: 'The expected drop in doubt is Shannon’s (1948), from memory.',
  input: z.strictObject({ case: caseToWeigh, alteration: z.string() }),
  output: z.strictObject({
    alteration: z.string(),
    name: z.string(),
    probability: z.number(),
    looks: z.array(
      z.strictObject({
        sign: z.string(),
        part: z.string().nullable(),
        bits: z.number(),
        minutes: z.number(),
        needs: z.string(),
        caution: z.string().optional(),
        ifFound: z.number(),
        ifNot: z.number(),
      }),
    ),
  }),
  example: {
    case: { form: 'armchair', claim: { period: [1760, 1785] }, findings: [] },
    alteration: 'arms-added',
  },
  run: (input, { knowledge, yearNow }) => suspicion(input.case, input.alteration, knowledge, yearNow),
});
