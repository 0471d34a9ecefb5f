import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { type Toolmarks, toolmarks } from '../photo/toolmarks/toolmarks.ts';
import { mostMarksRatio } from '../photo/toolmarks/toolmarksKinds.ts';
import { defineCalculation } from './define.ts';
import { namedPicture, pictureFile, pictureRegion } from './pictureFields.ts';

const leastPx = 60;

const input = z.strictObject({
  file: pictureFile,
  /** The whole picture where left out; 6 cm and more a side are best, of one board and one kind of mark. */
  region: pictureRegion.optional(),
  /** Millimetres of one pixel. */
  mmPerPx: z.number().positive().max(10),
  /** The direction of the board’s length in the picture, from the x axis towards y, which points down. */
  directionDeg: z.number().min(-360).max(360).default(0),
});

const share = z.number();

/** `photo.toolmarks`: see its own fields. */
export const photoToolmarks = defineCalculation({
  id: 'photo.toolmarks',
  answers: 'What tool left the marks on this surface, how far apart are they, and are they arcs?',
  method:
    'Take the photo with a light that rakes across the marks. Lines or arcs that cross the board: strips along it are shifted by circles of every lean and bend and averaged, and the shape that leaves the most variance is the marks’; its bend gives the radius, where it is more than four times its uncertainty. ' +
    'Spacing: the profile along the board, summed from slopes to heights, Hann’s window, the highest peak of the spectrum between 0.7 and 9 mm; regularity is the share of power in that period and its multiples. Where no one period holds half of the power, or it is far from the middle distance from mark to mark, the pitch is that distance. ' +
    'The kind: fifteen measures of marks across and along (strength, pitch, regularity, bend, lean, tracks, fine lines …), taken from the logarithm of lightness as shares of its whole spread so that exposure and contrast do not count, and a rule learned from drawn surfaces give the likelihoods, the largest 1, held within 1/8 to 8, for nothing but drawn surfaces is proven; marks may have worn away, which is shared among all kinds. It can’t tell where no marks are more probable, ' +
    'no kind reaches 70 in 100, a clear straight edge (of the board, of a shadow) parts the region, or the measures lie farther from all that was drawn than 99.5 in 100 of it (Mahalanobis’ distance); then the likelihoods are all 1, but for two kinds alike. Proven on drawn surfaces only (docs/toolmarks.md): a hint to look again with a lens, not a proof.',
  source:
    'Ours: a Radon transform along arcs, the periodogram (common practice; Fisher 1929 for its chance), multinomial logistic regression. Learned from and proven on surfaces we drew.',
  needsKnowledge: false,
  pictures: ({ file }) => [file],
  input,
  output: z.strictObject({
    pitchMm: z.number().optional(),
    pitchSigmaMm: z.number().optional(),
    regularity: z.number(),
    arcRadiusMm: z.number().optional(),
    arcSigmaMm: z.number().optional(),
    kind: z.enum([
      'hand-planed',
      'rotary-planer',
      'straight-saw',
      'circular-saw',
      'band-saw',
      'sliced',
      'cannot-tell',
    ]),
    likelihoods: z.strictObject({
      'hand-planed': share,
      'rotary-planer': share,
      'straight-saw': share,
      'circular-saw': share,
      'band-saw': share,
      sliced: share,
    }),
    /** How probable it is that there are no marks to speak of. */
    noMarks: share,
    /** How marks lean from square across the board. */
    leanDeg: z.number(),
    /** Share of the lightness along the board that marks across it explain. */
    strength: z.number(),
    /** The chance of so strong a period where nothing is periodic. */
    chance: z.number(),
    seenMm: z.strictObject({ along: z.number(), across: z.number() }),
    says: z.string(),
  }),
  example: { file: 'examples/pictures/sawn-board.png', mmPerPx: 0.207, directionDeg: -1.4 },
  run: (asked, context) => {
    const faults = asked.region === undefined ? [] : [{ path: 'region', region: asked.region, leastPx }];
    const picture = namedPicture(asked.file, faults, context);
    if (!picture.ok) return picture;
    const { widthPx, heightPx } = picture.output;
    const region = asked.region ?? { x: 0, y: 0, widthPx, heightPx };
    if (asked.mmPerPx > 0.5) return { ok: false, faults: [tooCoarse] };
    const found = toolmarks(picture.output, region, asked.mmPerPx, (asked.directionDeg * Math.PI) / 180);
    if (found === undefined) return { ok: false, faults: [tooSmall] };
    const { pitch, arc, seenMm } = found;
    if (seenMm.along < 15) return { ok: false, faults: [tooShort(seenMm.along)] };
    return {
      ok: true,
      output: {
        ...(pitch ? { pitchMm: pitch.mm, pitchSigmaMm: pitch.sigmaMm } : {}),
        regularity: found.regularity,
        ...(arc ? { arcRadiusMm: arc.radiusMm, arcSigmaMm: arc.sigmaMm } : {}),
        kind: found.kind,
        likelihoods: found.likelihoods,
        noMarks: found.noMarks,
        leanDeg: (found.leanRad * 180) / Math.PI,
        strength: found.strength,
        chance: found.chance,
        seenMm,
        says: says(found),
      },
    };
  },
});

const names = {
  'hand-planed': 'Shallow tracks along the board, as a hand plane leaves them.',
  'rotary-planer': 'Even waves across the board, as a rotary planer leaves them.',
  'straight-saw': 'Straight lines across at uneven distances, as a frame or pit saw leaves them.',
  'circular-saw': 'Arcs of one radius, as a circular saw leaves them.',
  'band-saw': 'Fine straight lines across, as a band saw leaves them.',
  sliced: 'Short checks along the grain, as slicing opens them.',
} as const;

function says({ kind, why }: Toolmarks): string {
  if (kind !== 'cannot-tell')
    return `${names[kind]} Proven on drawn surfaces only, and so it weighs at most ${mostMarksRatio} to 1.`;
  if (why === 'no marks')
    return 'No marks stand out here: rake the light more flatly, across the board and along it, and try again.';
  if (why === 'two kinds alike') return 'Two kinds explain these marks about alike: see the likelihoods.';
  if (why === 'an edge')
    return 'A straight edge, of the board or of a shadow, runs through this region: draw it anew within one evenly lit face.';
  return 'This surface is unlike anything the rule was tried on, so that it says nothing.';
}

const tooSmall: Fault = {
  code: 'photo.region-too-small',
  path: 'region',
  message:
    'This region is too small once it is turned along the board: draw it at least 60 by 60 pixels, and better 6 cm a side.',
};

const tooCoarse: Fault = {
  code: 'photo.scale',
  path: 'mmPerPx',
  message: 'A pixel of more than half a millimeter shows no tool marks: photograph from nearer by.',
};

function tooShort(alongMm: number): Fault {
  const message = `This region is ${alongMm.toFixed(1)} mm long, too little for any spacing: take in at least 15 mm, or mend the scale.`;
  return { code: 'photo.scale', path: 'mmPerPx', message };
}
