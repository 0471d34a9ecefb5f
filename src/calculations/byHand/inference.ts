import { z } from 'zod';
import { refuse } from '../../ground/fault.ts';
import { listed } from '../../ground/words.ts';
import { information } from '../../inference/information.ts';
import { posterior } from '../../inference/posterior.ts';
import { type CalculationResult, defineCalculation } from '../define.ts';

const id = z.string().min(1);
const share = z.number().min(0).max(1);

const networkShape = {
  variables: z.array(z.strictObject({ id, states: z.array(id).min(1) })),
  tables: z.array(
    z.strictObject({ variable: id, given: z.array(id).default([]), rows: z.array(z.array(z.number())) }),
  ),
  evidence: z.record(id, z.string()).default({}),
  soft: z.record(id, z.array(z.number())).default({}),
};

const method =
  'Exact elimination over a tree of buckets; the order is chosen so that tables stay small and does not change the answer. ' +
  'Rows are in row-major order of the given states, one probability for each state of the variable, and sum to 1 within 1e-9. ' +
  'Soft evidence multiplies in one likelihood for each state, on any scale. Numbers too small to hold are reckoned in ' +
  'logarithms. Evidence that can’t all be true is the fault inference.impossible-evidence, which names a smallest set that ' +
  'can’t stand together; a network whose tables would pass 16 million numbers is the fault inference.too-large.';

const rain = {
  variables: [
    { id: 'cloudy', states: ['true', 'false'] },
    { id: 'sprinkler', states: ['true', 'false'] },
    { id: 'rain', states: ['true', 'false'] },
    { id: 'wet', states: ['true', 'false'] },
  ],
  tables: [
    { variable: 'cloudy', given: [], rows: [[0.5, 0.5]] },
    { variable: 'sprinkler', given: ['cloudy'], rows: [[0.1, 0.9], [0.5, 0.5]] }, // biome-ignore format: a table
    { variable: 'rain', given: ['cloudy'], rows: [[0.8, 0.2], [0.2, 0.8]] }, // biome-ignore format: a table
    { variable: 'wet', given: ['sprinkler', 'rain'], rows: [[0.99, 0.01], [0.9, 0.1], [0.9, 0.1], [0, 1]] }, // biome-ignore format: a table
  ],
  evidence: { wet: 'true' },
};

/** `inference.posterior`: see its own fields. */
export const inferencePosterior = defineCalculation({
  id: 'inference.posterior',
  answers: 'How probable is each state of each unknown, given what was observed?',
  method,
  source:
    'Dechter, Bucket elimination (1999); Koller and Friedman, Probabilistic Graphical Models (2009), chapters 9 and 10; ' +
    'soft evidence after Pearl (1988), chapter 2: from memory.',
  needsKnowledge: false,
  input: z.strictObject({ ...networkShape, ask: z.array(id).optional() }),
  output: z.strictObject({
    posteriors: z.record(id, z.record(z.string(), share)),
    /** Natural log of the probability of the evidence; with soft evidence, on the scale of its likelihoods. */
    logEvidence: z.number(),
  }),
  example: { ...rain, ask: ['sprinkler', 'rain'] },
  run: ({ evidence, soft, ask, ...network }) => {
    const result = posterior(network, { hard: evidence, soft }, ask);
    if (!result.ok) return result;
    if (!result.possible) return impossible(result.conflicting);
    return { ok: true, output: { posteriors: result.posteriors, logEvidence: result.logEvidence } };
  },
});

/** `inference.information`: see its own fields. */
export const inferenceInformation = defineCalculation({
  id: 'inference.information',
  answers: 'By how many bits is looking at each candidate expected to lower the doubt about the target?',
  method: `Mutual information of target and candidate given the evidence, in bits: the entropy of the target less its expected entropy once the candidate is known. ${method}`,
  source: 'Shannon (1948): I(X;Y) = H(X) − Σ P(y) H(X|y), base 2.',
  needsKnowledge: false,
  input: z.strictObject({ ...networkShape, target: id, candidates: z.array(id) }),
  output: z.array(z.strictObject({ variable: id, bits: z.number().min(0) })),
  example: { ...rain, target: 'rain', candidates: ['cloudy', 'sprinkler'] },
  run: ({ evidence, soft, target, candidates, ...network }) => {
    const result = information(network, { hard: evidence, soft }, target, candidates);
    if (!result.ok) return result;
    if (!result.possible) return impossible(result.conflicting);
    return { ok: true, output: result.information };
  },
});

/** Impossible evidence has no posterior: the asker learns which observations can't stand together. */
function impossible(conflicting: readonly string[]): CalculationResult<never> {
  const names = conflicting.map((each) => `“${each}”`);
  const message =
    names.length === 1
      ? `What is given of ${names[0]} can’t be true in this network: check it, or the tables it hangs on.`
      : `What is given of ${listed(names)} can’t all be true in this network: check them, or the tables they hang on.`;
  return refuse('inference.impossible-evidence', message, 'evidence');
}
