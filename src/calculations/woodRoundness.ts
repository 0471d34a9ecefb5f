import { z } from 'zod';
import { refuse } from '../ground/fault.ts';
import { figureNumbers } from '../knowledge/figuresOf.ts';
import type { Wood, WoodMovement } from '../knowledge/woodSchema.ts';
import { acrossGrain } from '../wood/acrossGrain.ts';
import { coefficientFromShrinkage } from '../wood/coefficient.ts';
import { expectedOutOfRound, outOfRoundRatio, type RoundPart, type Spread } from '../wood/roundness.ts';
import { type CalculationResult, defineCalculation } from './define.ts';
import { chosenWood, cutMissing, ringAngleRad, woodFields } from './woodChoice.ts';

const spread = z.strictObject({ mean: z.number().min(0).max(40), sd: z.number().min(0).max(10) });
const expected = z.strictObject({ meanMm: z.number(), sdMm: z.number() });
const diameter = z.number().positive().max(10_000);

const input = z.strictObject({
  ...woodFields,
  /** The two diameters: along the grain and across it; of a turning, the largest and the smallest of one section. */
  alongMm: diameter,
  acrossMm: diameter,
  /** Standard uncertainty of each diameter. */
  sigmaMm: z.number().min(0).max(100),
  /** A top, seat or disc with the grain lying flat in it, or a turned leg, pillar or bowl stem with the grain along its axis. */
  part: z.enum(['top', 'turning']).default('top'),
  /** Of the old piece; the recent one’s is `moistureAtMakingRecent`. */
  moistureAtMaking: spread.optional(),
  moistureAtMakingRecent: spread.optional(),
  moistureNow: spread.optional(),
  /** In place of `moistureNow`: the climate the piece stands in, an id of wood-movement.yaml. */
  indoors: z.string().optional(),
});
type Input = z.infer<typeof input>;

/** No wood moves more than this across its grain. */
const mostShare = 0.2;

/** `wood.roundness`: see its own fields. */
export const woodRoundness = defineCalculation({
  id: 'wood.roundness',
  answers:
    'Has this round part shrunk across its grain as one made long ago should have, or as one made recently?',
  method:
    'The difference of the two diameters is along · c · (moisture at making − moisture now). Long ago wood was dried in the air, recently ' +
    'in a kiln; the moistures, the wood’s own variation, the maker’s and the measurer’s error have their spreads, from wood-movement.yaml ' +
    'where not given. For a top c is the movement across the grain (the mean of both tables where they differ, the difference added to ' +
    'the doubt); for a turning it is what the wood moves more along its rings than across them. The likelihood ratio divides the density ' +
    'of the measured difference under old by that under recent; under both a share of parts is out of round for other reasons, which ' +
    'keeps the ratio within what one measure can bear. A piece made recently of air-dried or old wood counts as old here.',
  source:
    'Ours, on the movement equation and figures of the Wood Handbook (FPL-GTR-190, 2010), chapters 4 and 13; the moisture at making before 1900 is a judgment, for nobody measured it.',
  input,
  output: z.strictObject({
    /** along − across: positive where it shrank across the grain. */
    differenceMm: z.number(),
    /** Standard uncertainty of the difference as measured. */
    sigmaMm: z.number(),
    expectedOld: expected,
    expectedNew: expected,
    /** old : recent. */
    likelihoodRatio: z.number(),
  }),
  example: { wood: 'mahogany-true', cut: 'flat-sawn', alongMm: 812, acrossMm: 801, sigmaMm: 0.8 },
  run: (asked, context) => {
    const angle = asked.part === 'turning' ? 0 : ringAngleRad(asked);
    if (angle === undefined) return { ok: false, faults: [cutMissing] };
    const chosen = chosenWood(asked.wood, context);
    if (!chosen.ok) return chosen;
    const { wood, movement } = chosen.output;
    const now = moistureNow(asked, movement);
    if (!now.ok) return now;
    const differenceMm = asked.alongMm - asked.acrossMm;
    if (Math.abs(differenceMm) > mostShare * asked.alongMm) return { ok: false, faults: [tooFar(asked)] };
    const part = roundPart(asked, wood, angle, movement, now.output);
    const old = asked.moistureAtMaking ?? movement.atMaking.old;
    const recent = asked.moistureAtMakingRecent ?? movement.atMaking.recent;
    return {
      ok: true,
      output: {
        differenceMm,
        sigmaMm: Math.SQRT2 * asked.sigmaMm,
        expectedOld: expectedOutOfRound(part, old),
        expectedNew: expectedOutOfRound(part, recent),
        likelihoodRatio: outOfRoundRatio(part, differenceMm, old, recent),
      },
    };
  },
});

function roundPart(
  { alongMm, sigmaMm, part }: Input,
  wood: Wood,
  angle: number,
  movement: WoodMovement,
  now: Spread,
): RoundPart {
  const across = movementOf(wood, angle, movement);
  // A turning has both directions in one section; each varies by itself.
  const rays = part === 'turning' ? movementOf(wood, Math.PI / 2, movement) : { mean: 0, sd: 0 };
  return {
    alongMm,
    coefficient: { mean: across.mean - rays.mean, sd: Math.hypot(across.sd, rays.sd) },
    moistureNow: now,
    madeMm: movement.madeRoundShare.value * alongMm,
    sigmaMm,
    otherCauses: {
      share: figureNumbers(movement.otherCauses).best / 100,
      sdMm: movement.otherCausesShare.value * alongMm,
    },
  };
}

/** The coefficient by both tables, with the wood’s own variation and how far they differ. */
export function movementOf(wood: Wood, angle: number, movement: WoodMovement): Spread {
  const { coefficient, shrinkagePercent, fibreSaturationPercent, tablesApartShare } = acrossGrain(
    wood,
    angle,
    movement,
  );
  const mean = (coefficient + coefficientFromShrinkage(shrinkagePercent, fibreSaturationPercent)) / 2;
  return { mean, sd: mean * Math.hypot(movement.ownVariationShare.value, tablesApartShare) };
}

/** The moisture a piece has now: as given, or that of the climate it stands in. */
export function moistureNow(
  asked: Pick<Input, 'moistureNow' | 'indoors'>,
  movement: WoodMovement,
): CalculationResult<Spread> {
  if (asked.moistureNow !== undefined) return { ok: true, output: asked.moistureNow };
  const wanted = asked.indoors ?? movement.defaultIndoors;
  const found = movement.indoors.find((each) => each.id === wanted);
  if (found !== undefined) return { ok: true, output: found };
  const known = movement.indoors.map((each) => each.id).join(', ');
  const message = `There is no climate “${wanted}”: take one of ${known}, or give moistureNow.`;
  return refuse('wood.climate-unknown', message, 'indoors');
}

function tooFar(asked: Input) {
  return {
    code: 'wood.not-round',
    path: 'acrossMm',
    message: `${asked.alongMm} and ${asked.acrossMm} mm differ by more than any wood moves: measure again, or take the part for one that was made oval.`,
  };
}
