import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { type TwinFit, twinsFit } from '../photo/outlines/twinsFit.ts';
import { isClosed } from '../photo/outlines/twinsOutline.ts';
import type { Point } from '../photo/picture.ts';
import { defineCalculation } from './define.ts';
import { pointField } from './photoFields.ts';

const outline = z.array(pointField).min(3).max(20_000);
const scale = z.number().positive().max(1000);

const input = z.strictObject({
  /** Two outlines as they were traced, in order, of the same stretch; in mm, or in pixels with a scale. */
  a: outline,
  b: outline,
  /** Millimetres of one unit of the outlines; 1 where left out. `mmPerPxB` where the second was taken at another scale. */
  mmPerPx: scale.default(1),
  mmPerPxB: scale.optional(),
  /** Whether the outlines come back to their beginning; judged by their ends where left out. */
  closed: z.boolean().optional(),
  /** Lets the size change too, where the scale is not known: then only the shape is compared. */
  freeSize: z.boolean().default(false),
  /** Standard uncertainty of a traced point, mm. */
  sigmaMm: z.number().min(0).max(50).default(0.3),
});
type Input = z.infer<typeof input>;

const fit = z.strictObject({
  rmsMm: z.number(),
  maxMm: z.number(),
  /** Of the second, turned over first where mirrored: degrees from x towards y, mm, and times its size. */
  turnDeg: z.number(),
  shiftMm: z.tuple([z.number(), z.number()]),
  size: z.number(),
  /** Where on the first, in its own units, they are furthest apart. */
  worstAt: z.tuple([z.number(), z.number()]),
});

/** `photo.twins`: see its own fields. */
export const photoTwins = defineCalculation({
  id: 'photo.twins',
  answers: 'How alike are two outlines, straight and turned over?',
  method:
    'The second outline is turned and shifted, and with freeSize scaled, until it lies nearest to the first: evenly spaced points, starts all round, then iterated closest points both ways. ' +
    'rms and max are of the distances between the outlines, both ways; rmsMm and maxMm are those of the better fit. mirrored turns the second over first, as a left and a right leg must be. ' +
    'Trace the same stretch on both and photograph both square on: what one outline has beyond the other, and any slant, counts as difference. noiseMm is what tracing alone leaves of equal outlines; what the likeness says of machine and hand tells findings.measured.',
  source:
    'Fit: iterated closest points (Besl and McKay 1992) with the closed-form motion (Umeyama 1991), both from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    rmsMm: z.number(),
    maxMm: z.number(),
    /** Standard uncertainty of rmsMm from tracing. */
    sigmaMm: z.number(),
    noiseMm: z.number(),
    plain: fit,
    mirrored: fit,
    better: z.enum(['plain', 'mirrored', 'alike']),
    notes: z.array(z.string()),
  }),
  example: {
    a: [[0, 0], [30, 4], [52, 60], [40, 150], [28, 260], [26, 330], [44, 372], [40, 390], [2, 390]],
    b: [[100, 0], [70, 4.4], [47.6, 60], [60.2, 150], [72.3, 260], [73.8, 330], [56.4, 372], [60, 390], [98, 390]],
    closed: false,
  }, // biome-ignore format: outlines on one line
  run: (asked) => {
    const faults = lengthFaults(asked);
    if (faults.length > 0) return { ok: false, faults };
    const [a, b] = [scaled(asked.a, asked.mmPerPx), scaled(asked.b, asked.mmPerPxB ?? asked.mmPerPx)];
    const closed = asked.closed ?? (isClosed(a) && isClosed(b));
    const of = (mirrored: boolean) =>
      twinsFit({ points: a, closed }, { points: b, closed }, mirrored, asked.freeSize);
    const [plain, mirrored] = [of(false), of(true)];
    const best = plain.rms <= mirrored.rms ? plain : mirrored;
    const noiseMm = Math.SQRT2 * asked.sigmaMm;
    // As many free looks as points were traced, at most; distances next to each other are not free of one another.
    const sigmaMm = noiseMm / Math.sqrt(2 * Math.min(60, a.length + b.length));
    const alike = Math.abs(plain.rms - mirrored.rms) <= 2 * Math.SQRT2 * sigmaMm;
    return {
      ok: true,
      output: {
        rmsMm: best.rms,
        maxMm: best.max,
        sigmaMm,
        noiseMm,
        plain: told(plain, asked.mmPerPx),
        mirrored: told(mirrored, asked.mmPerPx),
        better: alike ? ('alike' as const) : best === plain ? ('plain' as const) : ('mirrored' as const),
        notes: notesOn(asked, alike, best.rms, noiseMm),
      },
    };
  },
});

function scaled(points: readonly Point[], mmPerPx: number): Point[] {
  return points.map(([x, y]) => [x * mmPerPx, y * mmPerPx]);
}

function told({ rms, max, motion, worst }: TwinFit, mmPerPx: number): z.infer<typeof fit> {
  return {
    rmsMm: rms,
    maxMm: max,
    turnDeg: (motion.turnRad * 180) / Math.PI,
    shiftMm: [motion.shift[0], motion.shift[1]],
    size: motion.scale,
    worstAt: [worst[0] / mmPerPx, worst[1] / mmPerPx],
  };
}

function notesOn(asked: Input, alike: boolean, rmsMm: number, noiseMm: number): string[] {
  return [
    ...(asked.freeSize
      ? ['The size was left free, so that only the shapes are compared and nothing is weighed.']
      : []),
    ...(alike ? ['Straight and turned over they fit alike: the outline is as good as symmetrical.'] : []),
    ...(rmsMm <= 1.5 * noiseMm
      ? ['They differ by no more than tracing leaves: trace more finely to tell more.']
      : []),
  ];
}

function lengthFaults(asked: Input): Fault[] {
  return (['a', 'b'] as const).flatMap((path): Fault[] => {
    const [first] = asked[path];
    const long = asked[path].some(([x, y]) => x !== first?.[0] || y !== first?.[1]);
    const message = 'All points of this outline are one point: trace it from end to end.';
    return long ? [] : [{ code: 'photo.outline-without-length', path, message }];
  });
}
