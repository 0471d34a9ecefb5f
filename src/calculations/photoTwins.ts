import { z } from 'zod';
import { type TwinFit, twinsFit } from '../photo/outlines/twinsFit.ts';
import { twinsOdds } from '../photo/outlines/twinsOdds.ts';
import { isClosed } from '../photo/outlines/twinsOutline.ts';
import type { Point } from '../photo/picture.ts';
import { defineCalculation, type Fault } from './define.ts';
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
  answers: 'How alike are two outlines, straight and turned over, and did a machine or a hand leave them so?',
  method:
    'The second outline is turned and shifted, and with freeSize scaled, until it lies nearest to the first: evenly spaced points, starts all round, then iterated closest points both ways. ' +
    'rms and max are of the distances between the outlines, both ways; rmsMm and maxMm are those of the better fit. mirrored turns the second over first, as a left and a right leg must be. ' +
    'Trace the same stretch on both and photograph both square on: what one outline has beyond the other, and any slant, counts as difference. noiseMm is what tracing alone leaves of equal outlines. ' +
    'The likelihoods (largest 1) take a machine to leave about 0.25 mm, a template finished by hand 0.9 mm and work by eye 2.5 mm, each within a factor of about two; likelihoodRatio (machine : hand) counts 70 in 100 of hand work as by template ' +
    'and stays within 1/10 to 10. Wear, repairs and shrinkage part machine twins too, and a good hand may be very even.',
  source:
    'Fit: iterated closest points (Besl and McKay 1992) with the closed-form motion (Umeyama 1991), both from memory. The figures of what machines and hands leave are a judgment: no published measure is known to us.',
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
    likelihoods: z.strictObject({ machine: z.number(), template: z.number(), eye: z.number() }).nullable(),
    /** The ratio as likelihoods of how the part was worked, the largest 1, to be weighed with a finding. */
    tooling: z
      .strictObject({ hand: z.number(), 'early-machine': z.number(), 'modern-machine': z.number() })
      .nullable(),
    /** machine : hand; null where the size was left free without a scale. */
    likelihoodRatio: z.number().nullable(),
    basis: z.literal('judgement'),
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
    const odds = asked.freeSize ? undefined : twinsOdds(best.rms, noiseMm, sigmaMm);
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
        likelihoods: odds ? { machine: odds.machine, template: odds.template, eye: odds.eye } : null,
        tooling: odds ? toolingOf(odds.likelihoodRatio) : null,
        likelihoodRatio: odds?.likelihoodRatio ?? null,
        basis: 'judgement' as const,
        notes: notesOn(asked, alike, best.rms, noiseMm),
      },
    };
  },
});

function toolingOf(ratio: number) {
  const machine = Math.min(1, ratio);
  return { hand: Math.min(1, 1 / ratio), 'early-machine': machine, 'modern-machine': machine };
}

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
