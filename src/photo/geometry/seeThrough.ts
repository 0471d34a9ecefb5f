/** The edge of a pierced opening: how thick the wood is, and the slope cut off its back, if any. */
export type OpeningEdge = {
  /** Front to back, mm. */
  thicknessMm: number;
  /** How far from the back the slope begins, mm: 0 for a square edge, the whole thickness for an edge sloped all through. */
  chamferDepthMm: number;
  /** How far the slope cuts in from the opening, at the back, mm. */
  chamferWidthMm: number;
};

/**
 * How much of an opening one sees through from the side.
 *
 * Method: a line of sight at an angle θ to the square of the face passes the edge at two heights: the end of the square
 * part, a = thickness − chamfer depth from the front, and the back, where the opening is wider by the chamfer. At the far side the front
 * corner bounds the sight, at the near side whatever stands out most: so the open width, seen across the face, is w − max(a tan θ,
 * t tan θ − chamfer width, 0); and never below 0. One jamb only cuts in at a time, so the chamfer of that one counts.
 *
 * @param widthMm   of the opening at the front
 * @param angleRad  0 (square on) to below π/2, either side
 * @returns the share of the opening’s width that stays open, 0–1
 * @throws RangeError if a length is not above 0, the chamfer is deeper than the edge, or the angle is π/2 or more
 * @accuracy exact for straight jambs; compared with rays marched through a drawn edge, by test
 * @source ours: plane geometry
 */
export function openShare(widthMm: number, edge: OpeningEdge, angleRad: number): number {
  check(widthMm, edge);
  if (!(Math.abs(angleRad) < Math.PI / 2))
    throw new RangeError(`openShare needs an angle below π/2, got ${angleRad}`);
  const slope = Math.tan(Math.abs(angleRad));
  const { thicknessMm: t, chamferDepthMm: d, chamferWidthMm: c } = edge;
  const hidden = Math.max(0, (t - d) * slope, t * slope - c);
  return Math.max(0, 1 - hidden / widthMm);
}

/**
 * The smallest angle at which two edges of one opening differ by a share of its width.
 *
 * Method: the difference grows until the one closes, in straight pieces of tan θ; found by halving between 0 and the
 * angle at which the first of them closes.
 *
 * @param share  0–1, such as 0.1
 * @returns radians, undefined where they never differ so much
 */
export function angleOfDifference(
  widthMm: number,
  one: OpeningEdge,
  two: OpeningEdge,
  share: number,
): number | undefined {
  const differ = (slope: number) =>
    Math.abs(openShare(widthMm, one, Math.atan(slope)) - openShare(widthMm, two, Math.atan(slope)));
  const [first, second] = [closingSlope(widthMm, one), closingSlope(widthMm, two)];
  const end = Math.min(first, second);
  if (!(differ(end) >= share)) return undefined;
  let [low, high] = [0, end];
  for (let step = 0; step < 100; step++) {
    const middle = (low + high) / 2;
    if (differ(middle) >= share) high = middle;
    else low = middle;
  }
  return Math.atan(high);
}

/** The angle at which nothing is seen through any more, radians. */
export function closingAngle(widthMm: number, edge: OpeningEdge): number {
  return Math.atan(closingSlope(widthMm, edge));
}

function closingSlope(widthMm: number, edge: OpeningEdge): number {
  check(widthMm, edge);
  const { thicknessMm: t, chamferDepthMm: d, chamferWidthMm: c } = edge;
  return Math.min(d < t ? widthMm / (t - d) : Number.POSITIVE_INFINITY, (widthMm + c) / t);
}

function check(widthMm: number, { thicknessMm, chamferDepthMm, chamferWidthMm }: OpeningEdge): void {
  if (!(widthMm > 0 && thicknessMm > 0))
    throw new RangeError(`openShare needs widths above 0, got ${widthMm} and ${thicknessMm}`);
  if (!(chamferDepthMm >= 0 && chamferDepthMm <= thicknessMm && chamferWidthMm >= 0))
    throw new RangeError(
      `openShare needs a chamfer within the edge, got ${chamferDepthMm} by ${chamferWidthMm}`,
    );
}
