import { z } from 'zod';
import { caseToWeigh } from '../evidence/caseToWeigh.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { findingKey } from '../piece/finding.ts';
import { nextLooks } from '../weighing/nextLooks.ts';
import { photographsToAsk } from '../weighing/photographsToAsk.ts';
import { defineCalculation } from './define.ts';

const place = { sign: z.string(), part: z.string().nullable() };

/** `evidence.asks`: see its own fields. */
export const evidenceAsks = defineCalculation({
  id: 'evidence.asks',
  answers: 'Which photographs and answers should the owner be asked for, and what can no photograph show?',
  method:
    'The case is taken as one in photographs only. Every sign not yet answered that a photograph may show is given to the first picture of the list in the ' +
    'knowledge files that takes in its part and moves what it needs moved; bits say by how much it is expected to lower the doubt over ' +
    'the readings (mutual information, as in the next looks of evidence.weigh). Signs that no photograph shows stand in onlyInHand.',
  source:
    'The list of pictures is common practice; the expected drop in doubt is Shannon’s (1948), from memory.',
  input: caseToWeigh,
  output: z.strictObject({
    asks: z.array(
      z.strictObject({
        id: z.string(),
        kind: z.enum(['photograph', 'answer']),
        name: z.string(),
        ask: z.string(),
        caution: z.string().optional(),
        shows: z.array(z.strictObject({ ...place, shows: z.enum(['clear', 'hint']), bits: z.number() })),
      }),
    ),
    onlyInHand: z.array(z.strictObject(place)),
  }),
  example: { form: 'side-chair', mode: 'photo-only', claim: { period: [1760, 1785] }, findings: [] },
  run: (input, context) => {
    const ready = prepareCase({ ...input, mode: 'photo-only' }, context.knowledge, context.yearNow);
    if (!ready.ok) return ready;
    const answered = new Set(input.findings.map((each) => findingKey(each.sign, each.part)));
    return {
      ok: true,
      output: photographsToAsk(ready.prepared, nextLooks(ready.prepared, answered)),
    };
  },
});
