import { z } from 'zod';
import type { Fault } from '../../ground/fault.ts';
import { placesAlong, rayleigh } from '../../photo/geometry/markPlaces.ts';
import { markPitch } from '../../photo/toolmarks/toolmarksSpectrum.ts';
import { defineCalculation } from '../define.ts';

const lengthMm = z.number().positive().max(10_000);

const input = z.strictObject({
  /** Heights or lightness along a line across the marks, at even steps. */
  profile: z
    .strictObject({
      values: z.array(z.number().min(-1e12).max(1e12)).min(16).max(4096),
      stepMm: lengthMm,
      /** Shortest and longest spacing looked for; without it two steps to half of the length. */
      betweenMm: z.tuple([lengthMm, lengthMm]).optional(),
    })
    .optional(),
  /** Where single marks lie along a ruler, and the spacings to try on them. */
  marks: z
    .strictObject({
      placesMm: z.array(z.number().min(-1e6).max(1e6)).min(2).max(2000),
      periodsMm: z.array(lengthMm).max(100).default([]),
    })
    .optional(),
});

/** `photo.profile`: see its own fields. */
export const photoProfile = defineCalculation({
  id: 'photo.profile',
  answers: 'How far apart are the marks along a line, and are they too even for a hand?',
  method:
    'Profile: Hann’s window, zeros to sixteen times the length, the highest peak of the spectrum; regularity is the share of the power in it and its first two multiples. fisherG is the largest plain ordinate (1 to (n − 1)/2) over their sum, chance ' +
    'how probable one so large is where nothing is periodic. Marks: spacing between neighbors, with share = sd / mean; for each period the agreement R (length of the mean of their turns), z = n · R² and the chance of so much where the marks lie at random. ' +
    'A period that was read off the same marks makes that chance too small.',
  source:
    'Periodogram, common practice; Fisher (1929) for g; Rayleigh’s test as in Zar, Biostatistical Analysis; both from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    profile: z
      .strictObject({
        pitchMm: z.number(),
        regularity: z.number(),
        fisherG: z.number(),
        ordinates: z.int(),
        chance: z.number(),
      })
      .optional(),
    marks: z
      .strictObject({
        spacing: z.strictObject({
          meanMm: z.number(),
          sdMm: z.number().nullable(),
          share: z.number().nullable(),
          medianMm: z.number(),
        }),
        periods: z.array(
          z.strictObject({
            periodMm: z.number(),
            agreement: z.number(),
            z: z.number(),
            chance: z.number(),
          }),
        ),
      })
      .optional(),
  }),
  example: { marks: { placesMm: [0, 4.1, 8.3, 12.2, 16.4, 20.5, 24.7, 28.6], periodsMm: [4.1] } },
  run: ({ profile, marks }) => {
    if (!profile && !marks) return { ok: false, faults: [nothing] };
    if (profile?.values.every((each) => each === profile.values[0])) return { ok: false, faults: [level] };
    const length = profile ? profile.values.length * profile.stepMm : 0;
    const [shortMm, longMm] = profile?.betweenMm ?? [2 * (profile?.stepMm ?? 0), length / 2];
    if (profile && (shortMm < 2 * profile.stepMm || longMm > length || shortMm >= longMm))
      return { ok: false, faults: [outside(2 * profile.stepMm, length)] };
    if (marks && new Set(marks.placesMm).size < marks.placesMm.length) return { ok: false, faults: [twice] };
    return {
      ok: true,
      output: {
        ...(profile
          ? {
              profile: {
                ...markPitch(profile.values, profile.stepMm, shortMm, longMm),
                ordinates: Math.floor((profile.values.length - 1) / 2),
              },
            }
          : {}),
        ...(marks
          ? {
              marks: {
                spacing: placesAlong(marks.placesMm),
                periods: marks.periodsMm.map((periodMm) => ({
                  periodMm,
                  ...rayleigh(marks.placesMm, periodMm),
                })),
              },
            }
          : {}),
      },
    };
  },
});

const nothing: Fault = {
  code: 'photo.no-profile',
  path: '',
  message: 'There is nothing to measure: give a profile, or the places of marks.',
};
const level: Fault = {
  code: 'photo.level-profile',
  path: 'profile.values',
  message: 'All values are alike, so that there are no marks: take the line across the marks.',
};
const twice: Fault = {
  code: 'photo.mark-twice',
  path: 'marks.placesMm',
  message: 'One place is there twice: give each mark once.',
};

function outside(leastMm: number, mostMm: number): Fault {
  return {
    code: 'photo.spacing-range',
    path: 'profile.betweenMm',
    message: `This profile shows spacings from ${leastMm} to ${mostMm} mm: give a shorter and a longer one within them.`,
  };
}
