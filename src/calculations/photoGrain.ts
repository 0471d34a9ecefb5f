import { z } from 'zod';
import { refuse } from '../ground/fault.ts';
import { grainDirection } from '../photo/grain/grain.ts';
import { told } from '../units/doubt.ts';
import { defineCalculation } from './define.ts';
import { namedPicture, pictureFile, pictureRegion } from './pictureFields.ts';

const leastPx = 16;

const input = z.strictObject({
  file: pictureFile,
  /** The whole picture where left out. */
  region: pictureRegion.optional(),
});

const reasons = {
  plain:
    'there is nothing on this surface but its own rounding and slow shading; it may be painted, plain or out of focus',
  'no-direction': 'what is to be seen here runs every way alike, as noise, burl or speckle does',
  wanders: 'the grain runs every way in turn, so that no one direction stands for it: draw a smaller region',
} as const;

/** `photo.grain`: see its own fields. */
export const photoGrain = defineCalculation({
  id: 'photo.grain',
  answers: 'Which way does the grain run here, and how clearly?',
  method:
    'The region’s lightness (luminance in linear light, as CIE L*), averaged down where it has more than four million pixels (factor says by how much), gives a structure tensor: ' +
    'the products of its gradients (Gaussian derivatives, sigma 1 pixel) added up over squares, an even slope of lighting taken off each. The grain runs at a right angle to the direction of strongest change. ' +
    'orientationDeg is the direction along the grain, −90 to 90 from the x axis toward y, which points down: 30 falls to the right, ±90 is upright; acrossDeg is the direction of strongest change. ' +
    'coherence is the difference of the tensor’s eigenvalues over their sum: 0 no direction, 1 all in one. sigmaDeg is a jackknife over the squares, ' +
    'spreadDeg how far the direction wanders between them. It can’t tell where lightness changes by less than 0.15 (of 100) from pixel to pixel, coherence is under 0.15, or sigmaDeg is above 8. ' +
    'It sees lines, not wood: brush marks, scratches and saw marks have a direction too. The direction is that in the picture; a picture taken askew shows it askew.',
  source:
    'Structure tensor: Bigun and Granlund (First International Conference on Computer Vision, 1987) and Jähne, Digital Image Processing, both from memory; in use for fibers, as Püspöki and others (Advances in Anatomy, Embryology and Cell Biology 219, 2016) survey. Taking off the mean gradient and the limits are ours.',
  needsKnowledge: false,
  pictures: ({ file }) => [file],
  input,
  output: z.strictObject({
    orientationDeg: z.number(),
    acrossDeg: z.number(),
    sigmaDeg: z.number(),
    spreadDeg: z.number(),
    coherence: z.number(),
    /** Root mean square of the change in lightness, 0–100, from pixel to pixel. */
    contrast: z.number(),
    /** False: the numbers above are worth nothing, and says tells why. */
    tells: z.boolean(),
    says: z.string(),
    /** So many pixels a side were averaged into one. */
    factor: z.number().int(),
    /** Squares row by row from the top left of the region, placed in the picture’s pixels; null where a square can’t tell. */
    map: z.strictObject({
      columns: z.number().int(),
      rows: z.number().int(),
      cellPx: z.number(),
      cells: z.array(
        z.strictObject({
          x: z.number(),
          y: z.number(),
          orientationDeg: z.number().nullable(),
          coherence: z.number(),
        }),
      ),
    }),
  }),
  example: {
    file: 'examples/pictures/grain-cuff.png',
    region: { x: 10, y: 10, widthPx: 260, heightPx: 200 },
  },
  run: ({ file, region }, context) => {
    const asked = region === undefined ? [] : [{ path: 'region', region, leastPx }];
    const picture = namedPicture(file, asked, context);
    if (!picture.ok) return picture;
    const { widthPx, heightPx } = picture.output;
    if (Math.min(widthPx, heightPx) < leastPx) {
      const message = `This picture is too small to tell anything by: it needs at least ${leastPx} by ${leastPx} pixels.`;
      return refuse('photo.region-too-small', message, 'file');
    }
    const { why, says, ...found } = grainDirection(
      picture.output,
      region ?? { x: 0, y: 0, widthPx, heightPx },
    );
    const { orientationDeg } = found;
    return {
      ok: true,
      output: {
        ...found,
        acrossDeg: orientationDeg > 0 ? orientationDeg - 90 : orientationDeg + 90,
        tells: says === 'runs',
        says: why ? `Cannot tell: ${reasons[why]}.` : words(orientationDeg, found.sigmaDeg, found.coherence),
      },
    };
  },
});

function words(orientationDeg: number, sigmaDeg: number, coherence: number): string {
  const off = Math.abs(orientationDeg).toFixed(1);
  const way =
    Math.abs(orientationDeg) < 0.05
      ? 'level'
      : orientationDeg > 0
        ? 'falling to the right'
        : 'rising to the right';
  const clear = coherence > 0.6 ? 'plainly' : coherence > 0.3 ? 'fairly plainly' : 'faintly';
  return `The grain runs ${off}° off the level, ${way}, give or take ${told(sigmaDeg).toFixed(1)}°; it shows ${clear}.`;
}
