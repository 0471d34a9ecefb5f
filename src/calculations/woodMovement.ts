import { z } from 'zod';
import { refuse } from '../ground/fault.ts';
import type { WoodMovement } from '../knowledge/woodSchema.ts';
import { type AcrossGrain, acrossGrain } from '../wood/acrossGrain.ts';
import { coefficientFromShrinkage, shrinkageFromCoefficient } from '../wood/coefficient.ts';
import { changeByCoefficient, changeByShrinkage, changeBySimpleShrinkage } from '../wood/movement.ts';
import { type CalculationContext, type CalculationResult, defineCalculation } from './define.ts';
import { chosenWood, cutMissing, movementMissing, ringAngleRad, woodFields } from './woodChoice.ts';

const methods = ['coefficient', 'shrinkage', 'shrinkage-simple'] as const;
const moisture = z.number().min(0).max(300);

const input = z.strictObject({
  ...woodFields,
  wood: woodFields.wood.optional(),
  widthMm: z.number().positive().max(100_000),
  fromMoisturePercent: moisture,
  toMoisturePercent: moisture,
  method: z.enum(methods).default('coefficient'),
  /** Own figures in place of a listed wood: the coefficient, or the shrinkage from green to dry with its fibre saturation. */
  C: z.number().positive().max(0.02).optional(),
  shrinkagePercent: z.number().positive().max(50).optional(),
  fibreSaturationPercent: z.number().min(15).max(40).optional(),
});
type Input = z.infer<typeof input>;

/** `wood.movement`: see its own fields. */
export const woodMovementCalculation = defineCalculation({
  id: 'wood.movement',
  answers: 'How much does a board move across its grain when its moisture goes from one value to another?',
  method:
    'By coefficient: width · C · (to − from), meant for 6 to 14 %. By shrinkage: width · (to − from) / (100 F/S − F + from), with S the ' +
    'shrinkage from green to dry and F the fiber saturation, above which nothing moves. shrinkage-simple takes the width as the green ' +
    'one, as many workshop pages do. Between flat-sawn and quarter-sawn the movement is tangential · cos² θ + radial · sin² θ for rings at ' +
    'the angle θ to the width. A figure that no table prints for a wood is worked out from the other kind, and the notes say so. ' +
    'sigmaMm is the standard uncertainty from the wood’s own variation and from how far the two tables differ; boards are ' +
    'seldom flat-sawn all over, and so mostly move less. In place of a wood, C or shrinkagePercent may be given.',
  source:
    'Wood Handbook (FPL-GTR-190, 2010), chapter 13 for both equations, tables 4-3, 4-4 and 13-5 for the woods; each figure says in woods.yaml how far it was read. Ring angle: common practice.',
  input,
  output: z.strictObject({
    changeMm: z.number(),
    widthAfterMm: z.number(),
    method: z.enum(methods),
    sigmaMm: z.number(),
    /** What limits the answer, in sentences. */
    notes: z.array(z.string()),
  }),
  example: {
    wood: 'cherry-black',
    cut: 'flat-sawn',
    widthMm: 460,
    fromMoisturePercent: 12,
    toMoisturePercent: 7,
    method: 'coefficient',
  },
  run: (asked, context) => {
    const found = figuresFor(asked, context);
    if (!found.ok) return found;
    const { figures, movement, notes } = found.output;
    const change = changeOf(asked, figures);
    const relative = Math.hypot(movement.ownVariationShare.value, figures.tablesApartShare);
    return {
      ok: true,
      output: {
        changeMm: change,
        widthAfterMm: asked.widthMm + change,
        method: asked.method,
        sigmaMm: Math.abs(change) * relative,
        notes: [...notes, ...limits(asked, figures, movement)],
      },
    };
  },
});

type Found = CalculationResult<{ figures: AcrossGrain; movement: WoodMovement; notes: string[] }>;

function figuresFor(asked: Input, context: CalculationContext): Found {
  if (asked.wood === undefined) return ownFigures(asked, context.knowledge.woodMovement);
  if (
    asked.C !== undefined ||
    asked.shrinkagePercent !== undefined ||
    asked.fibreSaturationPercent !== undefined
  )
    return refuse(
      'wood.two-woods',
      'Give either a listed wood or own figures, not both: take one of them out.',
      'wood',
    );
  const angle = ringAngleRad(asked);
  if (angle === undefined) return { ok: false, faults: [cutMissing] };
  const chosen = chosenWood(asked.wood, context);
  if (!chosen.ok) return chosen;
  const { wood, movement } = chosen.output;
  const figures = acrossGrain(wood, angle, movement);
  return { ok: true, output: { figures, movement, notes: wood.note === undefined ? [] : [wood.note] } };
}

function ownFigures(asked: Input, movement: WoodMovement | undefined): Found {
  if (movement === undefined) return { ok: false, faults: [movementMissing] };
  const { C, shrinkagePercent: S } = asked;
  const saturation = asked.fibreSaturationPercent ?? movement.fibreSaturationPercent.value;
  const figures = { fibreSaturationPercent: saturation, workedOut: undefined, tablesApartShare: 0 };
  if (C !== undefined) {
    const shrinkagePercent = S ?? shrinkageFromCoefficient(C, saturation);
    return {
      ok: true,
      output: { figures: { ...figures, coefficient: C, shrinkagePercent }, movement, notes: [] },
    };
  }
  if (S === undefined)
    return refuse(
      'wood.missing',
      'Say which wood: an id of woods.yaml, or its own figure as C or shrinkagePercent.',
      'wood',
    );
  const coefficient = coefficientFromShrinkage(S, saturation);
  return {
    ok: true,
    output: { figures: { ...figures, coefficient, shrinkagePercent: S }, movement, notes: [] },
  };
}

function changeOf(
  asked: Input,
  { coefficient, shrinkagePercent, fibreSaturationPercent: F }: AcrossGrain,
): number {
  const { widthMm, fromMoisturePercent, toMoisturePercent } = asked;
  if (asked.method === 'coefficient') {
    return changeByCoefficient(
      widthMm,
      coefficient,
      Math.min(fromMoisturePercent, F),
      Math.min(toMoisturePercent, F),
    );
  }
  const change = asked.method === 'shrinkage' ? changeByShrinkage : changeBySimpleShrinkage;
  return change(widthMm, shrinkagePercent, F, fromMoisturePercent, toMoisturePercent);
}

function limits(asked: Input, figures: AcrossGrain, movement: WoodMovement): string[] {
  const { fromPercent, toPercent } = movement.coefficientHolds;
  const moistures = [asked.fromMoisturePercent, asked.toMoisturePercent];
  const outside = moistures.some((each) => each < fromPercent || each > toPercent);
  const wet = moistures.some((each) => each > figures.fibreSaturationPercent);
  const kind = asked.method === 'coefficient' ? 'coefficient' : 'shrinkage';
  return [
    ...(kind === 'coefficient' && outside
      ? [
          `Coefficients are meant for ${fromPercent} to ${toPercent} % moisture: outside that, ask by shrinkage.`,
        ]
      : []),
    ...(wet
      ? [
          `Above ${figures.fibreSaturationPercent} % moisture this wood does not move, so nothing was reckoned there.`,
        ]
      : []),
    ...(figures.workedOut === kind
      ? [`No table prints the ${kind} of this wood: it was worked out from the other kind of figure.`]
      : []),
    ...(figures.tablesApartShare > 0.1
      ? [
          `The two tables differ for this wood by ${Math.round(figures.tablesApartShare * 200)} in 100: reckon by both methods and show both.`,
        ]
      : []),
  ];
}
