/** The moisture at which the Handbook’s coefficients take the width, in percent. */
const baseMoisturePercent = 10;

/**
 * The coefficient of movement that follows from a total shrinkage.
 *
 * Method: C = S / (100 F − S (F − M₀)), with M₀ the moisture whose width C refers to. With F = 30 and M₀ = 10 that is
 * S / (3000 − 20 S).
 *
 * @param shrinkagePercent        S, green to dry, in percent of the green width
 * @param fibreSaturationPercent  F
 * @param basePercent             M₀; 10 in the Handbook
 * @returns share of the width for each percent of moisture
 * @accuracy to 0.00001 for 34 of the 37 woods whose two figures were both read in a Handbook; the other three carry a neighbour’s coefficient
 * @source ours: inferred from tables 4-3 and 13-5 of wood-handbook, which says only that C refers to the width at 10 %
 */
export function coefficientFromShrinkage(
  shrinkagePercent: number,
  fibreSaturationPercent: number,
  basePercent = baseMoisturePercent,
): number {
  return (
    shrinkagePercent /
    (100 * fibreSaturationPercent - shrinkagePercent * (fibreSaturationPercent - basePercent))
  );
}

/** The total shrinkage that follows from a coefficient: the same relation the other way. */
export function shrinkageFromCoefficient(
  coefficient: number,
  fibreSaturationPercent: number,
  basePercent = baseMoisturePercent,
): number {
  return (
    (100 * fibreSaturationPercent * coefficient) / (1 + coefficient * (fibreSaturationPercent - basePercent))
  );
}
