import { caseToWeigh } from '../evidence/caseToWeigh.ts';
import { weighCase } from '../weighing/weighCase.ts';
import { weighing } from '../weighing/weighing.ts';
import { defineCalculation } from './define.ts';

/** `evidence.weigh`: see its own fields. */
export const evidenceWeigh = defineCalculation({
  id: 'evidence.weigh',
  answers: 'What do the findings say of how the piece came to be, when, and what was done to it since?',
  method:
    'Exact summation over a causal model of the piece’s history, composed from the knowledge files for its form: how it was made, ' +
    'when, in which shop, what was altered, and for each part its origin, year, tooling, aging and use. Findings are traces of ' +
    'these. Intervals come from redrawing every figure within its range (seeded). Weights are in decibans: for the leading reading ' +
    'against all the others and against its strongest rival, finding by finding and for findings of one cause together; each is the ' +
    'whole held against the whole without them, and null, with the reason in words, where a hard limit leaves a side nothing. What no ' +
    'sign covers is weighed by the examiner’s word for how far it would be expected of each kind of piece, at most 10 to 1. No ' +
    'probability is shown above 0.999 or below 0.001; an answer the form leaves no way to says so in `considered`.',
  source:
    'Ours, on Good (1950) for weights and Pearl (1988) for causal networks: from memory. Every figure carries its own source in the knowledge files.',
  input: caseToWeigh,
  output: weighing,
  example: {
    form: 'side-chair',
    features: { seat: 'slip', back: 'splat', stretchers: 'h' },
    claim: { period: [1760, 1785], place: 'Massachusetts' },
    findings: [
      { sign: 'bare-wood-darkened', part: 'side-rail-left', state: 'present' },
      { sign: 'joint-pegged', part: 'side-rail-left', state: 'present' },
      { sign: 'saw-lines-pit', part: 'back-rail', state: 'present', sure: 'fairly' },
      { sign: 'stretcher-centred', part: 'side-stretcher-left', state: 'absent' },
      { sign: 'back-edges-chamfered', part: 'splat', state: 'could-not-tell' },
    ],
    observations: [
      {
        id: 'chalk',
        words: 'Chalk tally strokes inside the back rail, under the old dust.',
        expected: {
          original: 'sometimes',
          repaired: 'sometimes',
          altered: 'sometimes',
          married: 'sometimes',
          copied: 'seldom',
          faked: 'seldom',
        },
      },
    ],
    draws: 100,
    seed: 1,
  },
  run: (input, context) => weighCase(input, context.knowledge, context),
});
