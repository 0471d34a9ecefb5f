import { z } from 'zod';
import { radiusFromSagitta } from '../../photo/geometry/sagitta.ts';
import { defineCalculation } from '../define.ts';

/** `photo.sagitta`: see its own fields. */
export const photoSagitta = defineCalculation({
  id: 'photo.sagitta',
  answers: 'What radius has an arc, by a straightedge laid across it and the rise over its middle?',
  method:
    'r = c²/(8s) + s/2 for the chord c and the rise s; the standard uncertainty of both lengths is carried through to first order, taken as independent. The arc’s length is the lesser one as long as the rise is at most the radius.',
  source: 'Elementary geometry.',
  needsKnowledge: false,
  input: z.strictObject({
    chordMm: z.number().positive().max(1e6),
    sagittaMm: z.number().min(1e-6).max(1e6),
    sigmaChordMm: z.number().min(0).max(1e6).default(0),
    sigmaSagittaMm: z.number().min(0).max(1e6).default(0),
  }),
  output: z.strictObject({ radiusMm: z.number(), sigmaMm: z.number(), arcLengthMm: z.number() }),
  example: { chordMm: 300, sagittaMm: 12.5, sigmaChordMm: 0.5, sigmaSagittaMm: 0.1 },
  run: ({ chordMm, sagittaMm, sigmaChordMm, sigmaSagittaMm }) => {
    const { radius, sigma, arcLength } = radiusFromSagitta(chordMm, sagittaMm, sigmaChordMm, sigmaSagittaMm);
    return { ok: true, output: { radiusMm: radius, sigmaMm: sigma, arcLengthMm: arcLength } };
  },
});
