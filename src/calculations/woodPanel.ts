import { z } from 'zod';
import { figureNumbers } from '../knowledge/figuresOf.ts';
import { type PanelLoss, panelLoss } from '../wood/panelLoss.ts';
import { outOfRoundRatio } from '../wood/roundness.ts';
import { defineCalculation } from './define.ts';
import { chosenWood, cutMissing, ringAngleRad, woodFields } from './woodChoice.ts';
import { moistureNow, movementOf } from './woodRoundness.ts';

const spread = z.strictObject({ mean: z.number().min(0).max(40), sd: z.number().min(0).max(10) });
const lengthMm = z.number().positive().max(10_000);

const input = z.strictObject({
  ...woodFields,
  part: z.enum(['panel', 'drawer-bottom', 'round-top', 'board']).default('board'),
  /** Across the grain; of a round top the diameter along the grain, which keeps the size it was made to. */
  widthMm: lengthMm,
  /** When that width was so: measured now, or known from the time of making. */
  widthIs: z.enum(['now', 'at-making']).default('now'),
  /** Along the grain, for the drawing. */
  lengthMm: lengthMm.optional(),
  /** Which way the grain runs; as usual for the part where left out. */
  grain: z.enum(['side-to-side', 'front-to-back', 'upright']).optional(),
  moistureAtMaking: spread.optional(),
  moistureNow: spread.optional(),
  /** In place of `moistureNow`: the climate the piece stands in, an id of wood-movement.yaml. */
  indoors: z.string().optional(),
  /** The loss that is seen, such as a bare strip beside a panel, and the standard uncertainty of measuring it. */
  seenMm: z.number().min(-1000).max(1000).optional(),
  sigmaMm: z.number().min(0).max(100).default(0.5),
});
type Input = z.infer<typeof input>;

const loss = z.strictObject({
  lossMm: z.number(),
  sdMm: z.number(),
  rangeMm: z.tuple([z.number(), z.number()]),
});

/** `wood.panel-loss`: see its own fields. */
export const woodPanelLoss = defineCalculation({
  id: 'wood.panel-loss',
  answers:
    'How much should this panel, drawer bottom or round top have lost across its grain since it was made?',
  method:
    'loss = width at making · c · (moisture at making − moisture now), positive where it became narrower, with the standard deviation of the product of independent quantities: moistures by wood-movement.yaml where not given, c with the wood’s own variation and the mean of both tables. ' +
    'expected is for wood dried in the air long ago, recent for kiln-dried wood. A width measured now is taken back to the making; a round top’s diameter along the grain, and widthIs at-making, count as they are. With seenMm the ratio old : recent is ' +
    'that of the densities of what is seen, a share of other causes under both. A panel glued or painted fast splits instead; a drawer bottom may have been pushed forward or pieced, and then shows less than it lost. drawing gives the sizes at making and now.',
  source:
    'Ours, on the movement equation and figures of the Wood Handbook (FPL-GTR-190, 2010), chapters 4 and 13; the moisture at making before 1900 is a judgment.',
  input,
  output: z.strictObject({
    expected: loss,
    recent: loss,
    /** Across the grain, as it lies in the piece. */
    direction: z.enum(['side to side', 'front to back', 'up and down']),
    /** Where the loss shows. */
    shows: z.string(),
    drawing: z.strictObject({
      shape: z.enum(['rectangle', 'round']),
      alongMm: z.number(),
      acrossAtMakingMm: z.number(),
      acrossNowMm: z.number(),
    }),
    /** old : recent; null where nothing was seen or measured. */
    likelihoodRatio: z.number().nullable(),
  }),
  example: {
    wood: 'pine-eastern-white',
    cut: 'flat-sawn',
    part: 'drawer-bottom',
    widthMm: 440,
    lengthMm: 880,
    seenMm: 5,
    sigmaMm: 0.5,
  },
  run: (asked, context) => {
    const angle = ringAngleRad(asked);
    if (angle === undefined) return { ok: false, faults: [cutMissing] };
    const chosen = chosenWood(asked.wood, context);
    if (!chosen.ok) return chosen;
    const { wood, movement } = chosen.output;
    const now = moistureNow(asked, movement);
    if (!now.ok) return now;
    const coefficient = movementOf(wood, angle, movement);
    const part = { widthMm: asked.widthMm, coefficient, moistureNow: now.output };
    const isMade = asked.widthIs === 'at-making' || asked.part === 'round-top';
    const old = asked.moistureAtMaking ?? movement.atMaking.old;
    const [expected, recent] = [
      panelLoss(part, old, isMade),
      panelLoss(part, movement.atMaking.recent, isMade),
    ];
    const atMakingMm = expected.widthAtMakingMm;
    const round = {
      alongMm: atMakingMm,
      coefficient,
      moistureNow: now.output,
      madeMm: 0.5,
      sigmaMm: asked.sigmaMm / Math.SQRT2,
      otherCauses: {
        share: figureNumbers(movement.otherCauses).best / 100,
        sdMm: movement.otherCausesShare.value * atMakingMm,
      },
    };
    const seen = asked.seenMm;
    return {
      ok: true,
      output: {
        expected: told(expected),
        recent: told(recent),
        ...lies(asked),
        drawing: {
          shape: asked.part === 'round-top' ? ('round' as const) : ('rectangle' as const),
          alongMm: asked.part === 'round-top' ? asked.widthMm : (asked.lengthMm ?? 1.6 * asked.widthMm),
          acrossAtMakingMm: atMakingMm,
          acrossNowMm: atMakingMm - expected.lossMm,
        },
        likelihoodRatio:
          seen === undefined ? null : outOfRoundRatio(round, seen, old, movement.atMaking.recent),
      },
    };
  },
});

function told({ lossMm, sdMm, rangeMm }: PanelLoss): z.infer<typeof loss> {
  return { lossMm, sdMm, rangeMm };
}

const usualGrain = {
  panel: 'upright',
  'drawer-bottom': 'side-to-side',
  'round-top': 'side-to-side',
  board: 'side-to-side',
} as const;

const showsWhere = {
  panel:
    'a bare strip beside the frame where the panel came out of its groove, or a split where it was held fast',
  'drawer-bottom': 'a gap behind the front, or nail holes drawn out at the back, if nobody moved it forward',
  'round-top': 'a diameter across the grain shorter than that along it',
  board: 'a gap at its edge, a joint that opened, or a split',
} as const;

function lies({ part, grain }: Input) {
  const runs = grain ?? usualGrain[part];
  const across =
    runs === 'upright' || runs === 'front-to-back'
      ? ('side to side' as const)
      : part === 'panel'
        ? ('up and down' as const)
        : ('front to back' as const);
  return { direction: across, shows: showsWhere[part] };
}
