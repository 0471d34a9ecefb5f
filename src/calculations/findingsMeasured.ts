import { z } from 'zod';
import { partsOf } from '../drawing/partsOf.ts';
import { findingsFrom } from '../findings/findingsFrom.ts';
import { measurement } from '../findings/measurement.ts';
import { placesOf } from '../findings/placesOf.ts';
import type { Fault } from '../ground/fault.ts';
import { defineCalculation } from './define.ts';

/** `findings.measured`: see its own fields. */
export const findingsMeasured = defineCalculation({
  id: 'findings.measured',
  answers: 'Of which signs does this measurement speak, and how probable does it make each?',
  method:
    'Takes what another calculation measured, its id in `from`, and names the signs it speaks of, the fitting one first, each with likelihoods in proportion: under present and absent, or under the states of the unknown that the sign hangs on. ' +
    'Signs and figures are those of measurements.yaml. Outlines: what machines, templates and the eye leave is log-normal, machine : hand. Darkening and wear: normal under each cause, every ratio held within the most it may speak. Tool marks: the mean likelihood of the kinds of mark that are the sign against the mean of the others. ' +
    'Grain: the ratio of one piece to two, by what a sign’s being there means. Roundness and panels: old : recent. Seats: the normal share below and above the trade’s rule of an inch. With a form, places says on which parts of it each can be entered; such a finding goes into evidence.weigh as its measured likelihoods, of which at most 99 : 1 counts. ' +
    'Nothing comes out where a measurement can’t tell, or no sign is about it.',
  source:
    'Ours; each figure carries on whose word it stands in measurements.yaml, and basis says it for the whole: mostly judgment, for nobody has published how probable these measures are of old and of later work.',
  input: z.strictObject({
    measured: measurement,
    /** To be told where the findings can be entered. */
    form: z.string().optional(),
    features: z.record(z.string(), z.string()).default({}),
  }),
  output: z.strictObject({
    findings: z.array(
      z.strictObject({
        sign: z.string(),
        name: z.string(),
        /** The answer it leans to. */
        state: z.enum(['present', 'absent']),
        likelihoods: z.record(z.string(), z.number()),
        besides: z.string().optional(),
      }),
    ),
    /** Where each can be entered; null is the whole piece. Empty without a form. */
    places: z.array(z.strictObject({ sign: z.string(), part: z.string().nullable() })),
    /** On whose word the likelihoods stand. */
    basis: z.strictObject({
      by: z.enum(['common practice', 'judgement', 'from memory']).optional(),
      source: z.string().optional(),
      at: z.string().optional(),
      why: z.string(),
    }),
    /** The most it may speak for one side, where the figures hold it to one. */
    mostRatio: z.number().nullable(),
  }),
  example: {
    measured: { from: 'photo.twins', rmsMm: 0.4, noiseMm: 0.42, sigmaMm: 0.05 },
    form: 'side-chair',
  },
  run: ({ measured, form: formId, features }, { knowledge: { signs, forms, measurements } }) => {
    if (measurements === undefined)
      return fault('measured', 'The file measurements.yaml is missing from the knowledge: put it back.');
    const form = formId === undefined ? undefined : forms[formId];
    if (formId !== undefined && form === undefined)
      return fault(
        'form',
        `There is no form “${formId}”: take one of ${Object.keys(forms).sort().join(', ')}.`,
      );
    const { findings, basis, mostRatio } = findingsFrom(measured, measurements, signs, form);
    const places = form === undefined ? [] : placesOf(findings, signs, partsOf(form, features));
    return {
      ok: true,
      output: {
        findings: findings.map((each) => ({ ...each, name: signs[each.sign]?.name ?? each.sign })),
        places: places.map(({ finding, part }) => ({ sign: finding.sign, part: part ?? null })),
        basis,
        mostRatio,
      },
    };
  },
});

function fault(path: string, message: string): { ok: false; faults: Fault[] } {
  return {
    ok: false,
    faults: [{ code: `findings.${path === 'form' ? 'form-unknown' : 'no-figures'}`, path, message }],
  };
}
