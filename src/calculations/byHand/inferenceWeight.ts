import { z } from 'zod';
import { bitsOf, decibans, decibansOfNats, natsOf } from '../../inference/decibans.ts';
import { defineCalculation } from '../define.ts';

const input = z.strictObject({
  likelihoodRatio: z.number().min(1e-300).max(1e300),
  /** Probability before the evidence, where wanted. */
  prior: z.number().gt(0).lt(1).optional(),
});

/** `inference.weight`: see its own fields. */
export const inferenceWeight = defineCalculation({
  id: 'inference.weight',
  answers: 'How much does a likelihood ratio weigh, and what does it make of a probability?',
  method:
    'decibans = 10 · log10 of the ratio, bits and nats by base 2 and e. With a prior the odds are multiplied: posterior odds = ratio · prior / (1 − prior). ' +
    'Weights add up only for findings that are independent given either side; for those of one piece ask evidence.weigh, for a network inference.posterior.',
  source: 'Good, Probability and the Weighing of Evidence (1950), from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    decibans: z.number(),
    bits: z.number(),
    nats: z.number(),
    posterior: z.strictObject({ probability: z.number(), odds: z.number(), decibans: z.number() }).optional(),
  }),
  example: { likelihoodRatio: 12, prior: 0.1 },
  run: ({ likelihoodRatio, prior }) => {
    const weight = {
      decibans: decibans(likelihoodRatio),
      bits: bitsOf(likelihoodRatio),
      nats: natsOf(likelihoodRatio),
    };
    if (prior === undefined) return { ok: true, output: weight };
    const logOdds = weight.nats + Math.log(prior) - Math.log1p(-prior);
    const odds = Math.min(Number.MAX_VALUE, Math.exp(logOdds));
    const posterior = {
      probability: 1 / (1 + Math.exp(-logOdds)),
      odds,
      decibans: decibansOfNats(logOdds),
    };
    return { ok: true, output: { ...weight, posterior } };
  },
});
