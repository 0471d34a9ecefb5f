import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { armchairWidth, type WidthDifference } from '../sets/armchairWidth.ts';
import { likenessGroups, likenessOutliers, measureSpreads } from '../sets/likeness.ts';
import { defineCalculation } from './define.ts';

const name = z.string().min(1).max(100);
const lengthMm = z.number().positive().max(20_000);

const input = z.strictObject({
  members: z
    .array(
      z.strictObject({
        id: name,
        /** Members are compared within their kind: armchairs with armchairs, side chairs with side chairs. */
        kind: name.optional(),
        measures: z.record(name, lengthMm),
      }),
    )
    .min(2)
    .max(200),
  /** Sizes out of a catalogue are rough to about 2 cm: they are described, and nothing is judged by them. */
  source: z.enum(['measured', 'catalogue']).default('measured'),
  /** Standard uncertainty of one measure; 1 measured and 20 out of a catalogue where left out. */
  sigmaMm: z.number().positive().max(100).optional(),
  /** How far a maker’s hand lets pieces of one set differ (standard deviation): a judgement. */
  handMm: z.number().min(0).max(100).default(3),
});
type Input = z.infer<typeof input>;

const width = z.strictObject({ measure: z.string(), differenceMm: z.number(), sigmaMm: z.number() });

/** `sets.likeness`: see its own fields. */
export const setsLikeness = defineCalculation({
  id: 'sets.likeness',
  answers:
    'Which members of a set stand out, which go together, and are the armchairs wider as made armchairs are?',
  method:
    'Outliers: kind by kind and measure by measure, the modified z-score 0.6745 (x − median)/MAD beyond 3.5, where five or more have the measure (with MAD 0 the mean absolute deviation serves), and only if ' +
    'the value is also further from the median than twice the measuring uncertainty; test says whether the generalized extreme Studentized deviate (Grubbs’ test for one) agrees at 5 in 100. Groups: single linkage ' +
    'on the largest of the differences over shared measures, in units of √2 times measuring and hand together, cut at 3; members of other kinds are apart. ' +
    'armchairWidthDifferenceMm is the difference of the median overall widths, of the seats where no overall width is given. The trade’s rule that a made armchair is a couple of inches wider is about the seat; ' +
    'the overall width includes the arms, and in two documented suites differs by about 4½ in (114 mm). What the seats’ difference says of added arms tells findings.measured. Sizes out of catalogues are rough to about 2 cm: no outliers and no groups are told from them.',
  source:
    'Iglewicz and Hoaglin (1993) for the modified z-score; Rosner (1983) and Grubbs (1969), from memory; single linkage: Sneath (1957), from memory. The bounds of uncertainty and hand are ours; the rule of a couple of inches is common practice.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    outliers: z.array(
      z.strictObject({
        id: z.string(),
        measure: z.string(),
        valueMm: z.number(),
        medianMm: z.number(),
        z: z.number(),
        test: z.enum(['modified-z', 'modified-z and extreme-deviates']),
      }),
    ),
    groups: z.array(z.array(z.string())),
    armchairWidthDifferenceMm: z.number().optional(),
    /** The same with its uncertainty, apart for the whole and for the seat. */
    armchairWidth: z.strictObject({ overall: width.optional(), seat: width.optional() }),
    spreads: z.array(
      z.strictObject({
        kind: z.string(),
        measure: z.string(),
        count: z.int(),
        medianMm: z.number(),
        sdMm: z.number(),
        rangeMm: z.number(),
      }),
    ),
    /** False for sizes out of a catalogue. */
    judged: z.boolean(),
    notes: z.array(z.string()),
  }),
  example: {
    members: [
      { id: 'I', kind: 'side-chair', measures: { width: 552, 'seat-width-front': 531, 'seat-height': 432 } },
      { id: 'II', kind: 'side-chair', measures: { width: 555, 'seat-width-front': 534, 'seat-height': 430 } },
      {
        id: 'III',
        kind: 'side-chair',
        measures: { width: 549, 'seat-width-front': 530, 'seat-height': 433 },
      },
      {
        id: 'IIII',
        kind: 'side-chair',
        measures: { width: 553, 'seat-width-front': 533, 'seat-height': 431 },
      },
      { id: 'V', kind: 'side-chair', measures: { width: 551, 'seat-width-front': 532, 'seat-height': 409 } },
      { id: 'A', kind: 'armchair', measures: { width: 668, 'seat-width-front': 584, 'seat-height': 432 } },
    ],
  },
  run: (asked) => {
    const faults = doubled(asked);
    if (faults.length > 0) return { ok: false, faults };
    const judged = asked.source === 'measured';
    const sigmaMm = asked.sigmaMm ?? (judged ? 1 : 20);
    const { outliers, tooFew } = judged
      ? likenessOutliers(asked.members, sigmaMm)
      : { outliers: [], tooFew: [] };
    const widths = armchairWidth(asked.members, sigmaMm);
    const told = widths.overall ?? widths.seat;
    return {
      ok: true,
      output: {
        outliers,
        groups: judged ? likenessGroups(asked.members, sigmaMm, asked.handMm) : [],
        ...(told ? { armchairWidthDifferenceMm: told.differenceMm } : {}),
        armchairWidth: widths,
        spreads: measureSpreads(asked.members),
        judged,
        notes: [
          ...(judged
            ? []
            : [
                'These sizes are out of a catalogue, which is rough to about 2 cm: measure the pieces before judging.',
              ]),
          ...(tooFew.length > 0
            ? ['Where fewer than five of a kind have a measure, no outlier can be told from it.']
            : []),
          ...seatNote(widths.seat),
          ...overallNote(widths.overall),
        ],
      },
    };
  },
});

const inch = 25.4;

function seatNote(seat: WidthDifference | undefined): string[] {
  if (seat === undefined) return [];
  const rule = 'the trade’s rule is a couple of inches (about 50 mm)';
  const { differenceMm, sigmaMm } = seat;
  if (differenceMm - 2 * sigmaMm > inch)
    return [
      `The armchairs’ seats are ${inches(differenceMm)} in wider, as those of made armchairs are: ${rule}.`,
    ];
  if (differenceMm + 2 * sigmaMm < inch)
    return [
      `The armchairs’ seats are hardly wider (${inches(differenceMm)} in), where ${rule}: look whether arms were added to side chairs.`,
    ];
  return [
    `The armchairs’ seats are ${inches(differenceMm)} in wider, too near the bound of one inch to say; ${rule}.`,
  ];
}

function overallNote(overall: WidthDifference | undefined): string[] {
  if (overall === undefined) return [];
  return [
    `Over all the armchairs are ${inches(overall.differenceMm)} in wider; this includes the arms, so that the rule of a couple of inches is not about it: in two documented suites it is about 4½ in.`,
  ];
}

function inches(mm: number): string {
  return (mm / inch).toFixed(1).replace('-', '−');
}

function doubled({ members }: Input): Fault[] {
  return members.flatMap(({ id }, index): Fault[] =>
    members.findIndex((each) => each.id === id) < index
      ? [
          {
            code: 'sets.member-twice',
            path: `members[${index}].id`,
            message: `The member “${id}” is there twice: give each its own name.`,
          },
        ]
      : [],
  );
}
