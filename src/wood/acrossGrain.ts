import type { Wood, WoodMovement } from '../knowledge/woodSchema.ts';
import { coefficientFromShrinkage, shrinkageFromCoefficient } from './coefficient.ts';

/** How a wood moves in one direction across its grain. */
export type AcrossGrain = {
  /** Share of the width for each percent of moisture. */
  coefficient: number;
  /** Green to dry, in percent of the green width. */
  shrinkagePercent: number;
  fibreSaturationPercent: number;
  /** Which of the two no table prints for this wood, so that it was worked out from the other. */
  workedOut: 'coefficient' | 'shrinkage' | undefined;
  /** Half of how far the two tables differ, as a share of their mean, in coefficients; 0 where only one prints it. */
  tablesApartShare: number;
};

/**
 * How a wood moves across its grain at a ring angle.
 *
 * Method: the rings lie at an angle θ to the width: 0 flat-sawn, 90° quarter-sawn. Movement is then
 * tangential · cos² θ + radial · sin² θ, for coefficients and for shrinkages alike. A figure that no table prints is
 * worked out from the other kind (see `coefficientFromShrinkage`).
 *
 * @param ringAngleRad  0 to π/2
 * @returns see its type
 * @throws RangeError if the angle lies outside
 * @accuracy exact at both ends; between them the usual rule for small movements in two directions at right angles
 * @source common practice (the strain along a line between two principal directions)
 */
export function acrossGrain(wood: Wood, ringAngleRad: number, movement: WoodMovement): AcrossGrain {
  if (!(ringAngleRad >= 0 && ringAngleRad <= Math.PI / 2))
    throw new RangeError(`acrossGrain needs an angle from 0 to π/2, got ${ringAngleRad}`);
  const saturation = wood.fibreSaturationPercent ?? movement.fibreSaturationPercent.value;
  const flat = { printed: wood.coefficient?.tangential, shrinkage: wood.shrinkage?.tangentialPercent };
  const quarter = { printed: wood.coefficient?.radial, shrinkage: wood.shrinkage?.radialPercent };
  const tangential = both(flat.printed, flat.shrinkage, saturation);
  const radial = both(quarter.printed, quarter.shrinkage, saturation);
  const radialShare = Math.sin(ringAngleRad) ** 2;
  const at = (pick: (each: Both) => number) =>
    pick(tangential) * (1 - radialShare) + pick(radial) * radialShare;
  const coefficient = at((each) => each.coefficient);
  const fromShrinkage = at((each) => each.fromShrinkage);
  const used = [radialShare < 1 ? tangential : undefined, radialShare > 0 ? radial : undefined];
  return {
    coefficient,
    shrinkagePercent: at((each) => each.shrinkagePercent),
    fibreSaturationPercent: saturation,
    workedOut: used.map((each) => each?.workedOut).find((each) => each !== undefined),
    // Each direction by itself, so that what is too much one way does not hide what is too little the other.
    tablesApartShare:
      at((each) => Math.abs(each.coefficient - each.fromShrinkage)) / (coefficient + fromShrinkage),
  };
}

type Both = {
  coefficient: number;
  shrinkagePercent: number;
  fromShrinkage: number;
  workedOut: 'coefficient' | 'shrinkage' | undefined;
};

function both(printed: number | undefined, shrinkage: number | undefined, saturation: number): Both {
  if (shrinkage !== undefined) {
    const fromShrinkage = coefficientFromShrinkage(shrinkage, saturation);
    const coefficient = printed ?? fromShrinkage;
    const workedOut = printed === undefined ? ('coefficient' as const) : undefined;
    return { coefficient, shrinkagePercent: shrinkage, fromShrinkage, workedOut };
  }
  if (printed === undefined) throw new RangeError('acrossGrain needs a wood with a figure in this direction');
  const shrinkagePercent = shrinkageFromCoefficient(printed, saturation);
  return { coefficient: printed, shrinkagePercent, fromShrinkage: printed, workedOut: 'shrinkage' };
}
