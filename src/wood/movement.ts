/**
 * How much a board moves across the grain between two moistures, by the coefficient of its wood.
 *
 * Method: change = width · C · (M₂ − M₁). Meant for moistures from 6 to 14 %.
 *
 * @param widthMm      width across the grain at the first moisture, above 0
 * @param coefficient  C: share of the width for each percent of moisture
 * @returns millimetres; negative = shrinks
 * @accuracy repeats the Handbook’s own example (a flat-grained white fir) to the digits printed
 * @source wood-handbook, chapter 13 (equation for 6 to 14 %)
 */
export function changeByCoefficient(
  widthMm: number,
  coefficient: number,
  fromMoisturePercent: number,
  toMoisturePercent: number,
): number {
  checkWidth('changeByCoefficient', widthMm);
  return widthMm * coefficient * (toMoisturePercent - fromMoisturePercent);
}

/**
 * How much a board moves across the grain between two moistures, by the total shrinkage of its wood.
 *
 * Method: from green to dry the wood loses S percent of its green width, evenly as the moisture falls from fibre
 * saturation F to nothing; so change = width · (M₂ − M₁) / (100 F/S − F + M₁). Above F nothing moves: moistures are
 * held at F. The straight line is a simplification; the true one bends a little at both ends.
 *
 * @param widthMm                width across the grain at the first moisture, above 0
 * @param shrinkagePercent       S, green to dry, in percent of the green width
 * @param fibreSaturationPercent F
 * @returns millimetres; negative = shrinks
 * @source wood-handbook, chapter 13 (equation for moistures outside 6 to 14 %), which has 30 for F: from memory
 */
export function changeByShrinkage(
  widthMm: number,
  shrinkagePercent: number,
  fibreSaturationPercent: number,
  fromMoisturePercent: number,
  toMoisturePercent: number,
): number {
  checkWidth('changeByShrinkage', widthMm);
  const from = Math.min(fromMoisturePercent, fibreSaturationPercent);
  const to = Math.min(toMoisturePercent, fibreSaturationPercent);
  const greenOverShrinkage = (100 * fibreSaturationPercent) / shrinkagePercent;
  return (widthMm * (to - from)) / (greenOverShrinkage - fibreSaturationPercent + from);
}

/**
 * The same, as workshop pages reckon it: change = width · S/100 · (M₂ − M₁)/F, as though the width were the green one.
 *
 * @source common practice; differs from `changeByShrinkage` by a few parts in a hundred of the change
 */
export function changeBySimpleShrinkage(
  widthMm: number,
  shrinkagePercent: number,
  fibreSaturationPercent: number,
  fromMoisturePercent: number,
  toMoisturePercent: number,
): number {
  checkWidth('changeBySimpleShrinkage', widthMm);
  const from = Math.min(fromMoisturePercent, fibreSaturationPercent);
  const to = Math.min(toMoisturePercent, fibreSaturationPercent);
  return (widthMm * (shrinkagePercent / 100) * (to - from)) / fibreSaturationPercent;
}

/**
 * How much of its green width a wood has lost at a moisture.
 *
 * Method: S_M = S · (F − M)/F, nothing above F.
 *
 * @returns percent of the green width
 * @source wood-handbook, chapter 4
 */
export function shrinkageAt(
  shrinkagePercent: number,
  fibreSaturationPercent: number,
  moisturePercent: number,
): number {
  const below = Math.max(0, fibreSaturationPercent - moisturePercent);
  return (shrinkagePercent * below) / fibreSaturationPercent;
}

function checkWidth(name: string, widthMm: number): void {
  if (!(widthMm > 0 && Number.isFinite(widthMm)))
    throw new RangeError(`${name} needs a width above 0, got ${widthMm}`);
}
