import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { colourDifference, differenceSigma } from '../photo/colour/colourDifference.ts';
import { type Lab, labOfRgb, rgbOfHex } from '../photo/colour/colourSpace.ts';
import { defineCalculation } from './define.ts';

/** A colour of a screen, written as six digits of hexadecimal. */
export const hexColour = z.string().regex(/^#?[0-9a-fA-F]{6}$/, 'a color is written as #9a7b4f');

/** A colour of CIELAB. */
export const labColour = z.strictObject({
  L: z.number().min(-1).max(150),
  a: z.number().min(-250).max(250),
  b: z.number().min(-250).max(250),
});

const colour = z.union([hexColour, labColour]);
const sigma = z.union([z.number().min(0).max(50), labColour]);

const input = z.strictObject({
  a: colour,
  b: colour,
  /** The white of the Lab values; colours of the screen are read under it. */
  white: z.enum(['D65', 'D50']).default('D65'),
  /** Standard uncertainty of each colour: one number for L, a and b alike, or each by itself. */
  sigmaA: sigma.optional(),
  sigmaB: sigma.optional(),
});

/** `photo.colour-difference`: see its own fields. */
export const photoColourDifference = defineCalculation({
  id: 'photo.colour-difference',
  answers: 'How far apart do two colors look?',
  method:
    'CIEDE2000 with its weights at 1. A color of a screen (sRGB) is brought to CIELAB by IEC 61966-2-1 under D65, or adapted to D50 by Bradford; ' +
    'two Lab values must be under one white. About 1 is the least that is seen side by side and 2 to 3 is plain, for even colors; wood is ' +
    'not even, so compare with what two places of one board differ by. sigma is the standard uncertainty by propagation, where uncertainties are given; ' +
    'near no difference it is a bound rather than a spread, for a difference can’t fall below 0.',
  source:
    'Sharma, Wu and Dalal, Color Research and Application 30 (2005), for CIEDE2000; IEC 61966-2-1 for sRGB; propagation by JCGM 100:2008.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    deltaE2000: z.number(),
    /** Null where no uncertainty was given. */
    sigma: z.number().nullable(),
    /** The straight distance in Lab, the formula of 1976. */
    deltaE76: z.number(),
    /** b − a, each in Lab. */
    change: labColour,
    a: labColour,
    b: labColour,
    white: z.enum(['D65', 'D50']),
  }),
  example: { a: '#8b5a2b', b: '#a5713c' },
  run: (asked) => {
    const [a, b] = [asked.a, asked.b].map((each) =>
      typeof each === 'string' ? labOfRgb(rgbOfHex(each), asked.white) : each,
    ) as [Lab, Lab];
    const sigmas = [asked.sigmaA, asked.sigmaB];
    const given = sigmas.some((each) => each !== undefined);
    const faults = sigmas.flatMap((each, index): Fault[] =>
      typeof each === 'object' && (each.L < 0 || each.a < 0 || each.b < 0)
        ? [
            {
              code: 'photo.sigma-negative',
              path: index === 0 ? 'sigmaA' : 'sigmaB',
              message: 'An uncertainty can’t be below 0: write how far the color may be off, either way.',
            },
          ]
        : [],
    );
    if (faults.length > 0) return { ok: false, faults };
    return {
      ok: true,
      output: {
        deltaE2000: colourDifference(a, b),
        sigma: given ? differenceSigma(a, b, sigmaOf(sigmas[0]), sigmaOf(sigmas[1])) : null,
        deltaE76: Math.hypot(a.L - b.L, a.a - b.a, a.b - b.b),
        change: { L: b.L - a.L, a: b.a - a.a, b: b.b - a.b },
        a,
        b,
        white: asked.white,
      },
    };
  },
});

function sigmaOf(given: number | Lab | undefined): Lab {
  if (typeof given === 'object') return given;
  const one = given ?? 0;
  return { L: one, a: one, b: one };
}
