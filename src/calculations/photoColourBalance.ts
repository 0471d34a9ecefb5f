import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { balancedLab, type FittedBalance, fitBalance } from '../photo/colour/colourBalance.ts';
import { colourDifference, differenceSigma } from '../photo/colour/colourDifference.ts';
import { colourSample } from '../photo/colour/colourSample.ts';
import { type Lab, labOfRgb, type Rgb, rgbOfHex } from '../photo/colour/colourSpace.ts';
import type { Picture } from '../photo/picture.ts';
import { type CalculationContext, type CalculationResult, defineCalculation } from './define.ts';
import { hexColour, labColour } from './photoColour.ts';
import { namedPicture, pictureFile, pictureRegion } from './pictureFields.ts';

const leastPx = 6;
const most = 0.05;

const input = z.strictObject({
  file: pictureFile,
  /** Patches of a card and the colours they have; without any, the colours are those of the camera. */
  patches: z
    .array(z.strictObject({ region: pictureRegion, nominal: hexColour }))
    .max(50)
    .default([]),
  /** Places whose colour is wanted. */
  samples: z
    .array(z.strictObject({ id: z.string().min(1), region: pictureRegion }))
    .min(1)
    .max(50),
  /** Two of the samples: the one that light, air and hands reach, and the one that was covered. */
  compare: z.strictObject({ exposed: z.string(), protected: z.string() }).optional(),
  /** Of the compared places: pale bare wood darkens with age; others do not do so surely, and are only described. */
  surface: z.enum(['pale-bare', 'other']).default('other'),
});
type Input = z.infer<typeof input>;

const sample = z.strictObject({
  id: z.string(),
  lab: labColour,
  /** How far single places of the region depart. */
  sd: labColour,
  /** Standard uncertainty of the mean, with that of the balance. */
  sigma: labColour,
  clippedShare: z.number(),
});
type Sample = z.infer<typeof sample>;

/** `photo.colour-balance`: see its own fields. */
export const photoColourBalance = defineCalculation({
  id: 'photo.colour-balance',
  answers:
    'What color are these places of a photograph, once a gray card has put it right, and has one darkened?',
  method:
    'Each channel is put right by a straight line in linear light that brings the patches to their colors, by least squares in which dark patches count as they are seen; one patch ' +
    'sets the gain alone. What stays over at the patches is the uncertainty of the balance: null with one or two, and then the sigmas hold only what the wood itself varies. ' +
    'A region’s color is the mean of 6 by 6 blocks, its uncertainty their spread over the root of their number. Two places are compared by CIEDE2000 with its sigma, to which the balance, being shared, adds nothing; ' +
    'the photo’s light must fall alike on both. What a darkening of pale bare wood says of its age tells findings.measured; other surfaces are only described: mahogany and walnut fade.',
  source: 'Ours: least squares on the practice of the gray card; CIEDE2000 by Sharma, Wu and Dalal (2005).',
  needsKnowledge: false,
  pictures: ({ file }) => [file],
  input,
  output: z.strictObject({
    balance: z.strictObject({ gain: z.array(z.number()), offset: z.array(z.number()) }).nullable(),
    /** CIEDE2000 left at each patch. */
    residuals: z.array(z.number()),
    samples: z.array(sample),
    comparison: z
      .strictObject({
        deltaE2000: z.number(),
        sigma: z.number(),
        /** L of the protected place less L of the exposed: positive where the exposed is darker. */
        darkerByL: z.number(),
        /** Standard uncertainty of darkerByL. */
        sigmaL: z.number(),
      })
      .nullable(),
    notes: z.array(z.string()),
  }),
  example: {
    file: 'examples/pictures/drawer-side.png',
    patches: [
      { region: { x: 20, y: 20, widthPx: 50, heightPx: 40 }, nominal: '#333333' },
      { region: { x: 90, y: 20, widthPx: 50, heightPx: 40 }, nominal: '#777777' },
      { region: { x: 160, y: 20, widthPx: 50, heightPx: 40 }, nominal: '#dddddd' },
    ],
    samples: [
      { id: 'outside', region: { x: 20, y: 90, widthPx: 120, heightPx: 130 } },
      { id: 'inside', region: { x: 180, y: 90, widthPx: 120, heightPx: 130 } },
    ],
    compare: { exposed: 'outside', protected: 'inside' },
    surface: 'pale-bare',
  },
  run: (asked, context) => {
    const found = pictureFor(asked, context);
    if (!found.ok) return found;
    const patches = asked.patches.map(({ region, nominal }) => ({
      nominal: rgbOfHex(nominal),
      taken: colourSample(found.output, region, labOfRgb),
    }));
    const faults = [...compareFaults(asked), ...patchFaults(patches)];
    if (faults.length > 0) return { ok: false, faults };
    const fitted =
      patches.length === 0
        ? undefined
        : fitBalance(patches.map(({ nominal, taken }) => ({ nominal, measured: taken.mean })));
    const samples = asked.samples.map((each) => sampled(found.output, each, fitted));
    return {
      ok: true,
      output: {
        balance: fitted ? { gain: [...fitted.balance.gain], offset: [...fitted.balance.offset] } : null,
        residuals: fitted?.residuals ?? [],
        samples: samples.map(({ own: _own, ...rest }) => rest),
        comparison: comparison(asked, samples),
        notes: notesOn(fitted, samples, asked),
      },
    };
  },
});

function pictureFor(asked: Input, context: CalculationContext): CalculationResult<Picture> {
  return namedPicture(
    asked.file,
    [
      ...asked.patches.map(({ region }, index) => ({ path: `patches[${index}].region`, region, leastPx })),
      ...asked.samples.map(({ region }, index) => ({ path: `samples[${index}].region`, region, leastPx })),
    ],
    context,
  );
}

function patchFaults(patches: readonly { taken: { mean: Rgb; clippedShare: number } }[]): Fault[] {
  return patches.flatMap(({ taken }, index): Fault[] =>
    taken.clippedShare > most
      ? [
          {
            code: 'photo.patch-clipped',
            path: `patches[${index}].region`,
            message:
              'This patch is burnt out or black in the photo, so its color is lost: leave it out, or expose again.',
          },
        ]
      : [],
  );
}

function compareFaults({ compare, samples }: Input): Fault[] {
  if (compare === undefined) return [];
  return (['exposed', 'protected'] as const).flatMap((side): Fault[] =>
    samples.some(({ id }) => id === compare[side])
      ? []
      : [
          {
            code: 'photo.sample-unknown',
            path: `compare.${side}`,
            message: `There is no sample “${compare[side]}”: name one of ${samples.map(({ id }) => id).join(', ')}.`,
          },
        ],
  );
}

/** A sample, and apart from what is told of it the uncertainty of the region alone. */
type OwnSample = Sample & { own: Lab };

function sampled(
  picture: Picture,
  { id, region }: Input['samples'][number],
  fitted: FittedBalance | undefined,
): OwnSample {
  const labOf = fitted ? (rgb: Rgb) => balancedLab(rgb, fitted.balance) : (rgb: Rgb) => labOfRgb(rgb);
  const { lab, sd, sigma, clippedShare } = colourSample(picture, region, labOf);
  const ofBalance = fitted?.sigma ?? { L: 0, a: 0, b: 0 };
  const both = (key: keyof Lab) => Math.hypot(sigma[key], ofBalance[key]);
  return { id, lab, sd, sigma: { L: both('L'), a: both('a'), b: both('b') }, clippedShare, own: sigma };
}

function comparison({ compare }: Input, samples: readonly OwnSample[]) {
  if (compare === undefined) return null;
  const exposed = samples.find(({ id }) => id === compare.exposed) as OwnSample;
  const covered = samples.find(({ id }) => id === compare.protected) as OwnSample;
  const darkerByL = covered.lab.L - exposed.lab.L;
  return {
    deltaE2000: colourDifference(exposed.lab, covered.lab),
    sigma: differenceSigma(exposed.lab, covered.lab, exposed.own, covered.own),
    darkerByL,
    sigmaL: Math.hypot(exposed.own.L, covered.own.L),
  };
}

function notesOn(fitted: FittedBalance | undefined, samples: readonly Sample[], asked: Input): string[] {
  const burnt = samples.filter(({ clippedShare }) => clippedShare > most).map(({ id }) => id);
  return [
    ...(fitted
      ? []
      : ['No card was given, so these are the camera’s colors: compare places of one photo only.']),
    ...(fitted && fitted.sigma === null
      ? [
          'With so few patches nothing tells how good the balance is: take three or more of different lightness.',
        ]
      : []),
    ...(burnt.length > 0
      ? [`Partly burnt out or black in the photo: ${burnt.join(', ')}; expose again.`]
      : []),
    ...(asked.compare && asked.surface === 'other'
      ? ['The difference is described only: whether such a surface darkens or fades with age is not settled.']
      : []),
    ...(asked.compare ? ['Color can’t tell stain from age.'] : []),
  ];
}
