import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { edgesSeeThrough } from '../../../calculations/seeThrough.ts';

/** What `edges.see-through` gives back. */
export type SeeThrough = OutputOf<typeof edgesSeeThrough>;

/** What stays open at an angle; nothing beyond the end of the curve. */
export function openAt(curve: SeeThrough['curve'], angleDeg: number): { square: number; chamfered: number } {
  return curve.find((each) => each.angleDeg === angleDeg) ?? { square: 0, chamfered: 0 };
}

/** The result in sentences: when an opening closes with square edges, and from where a slope shows. */
export function edgeWords(found: SeeThrough, isChamfered: boolean): string {
  const { closesDeg, differsFromDeg, most } = found;
  const closes = `With square edges it closes at ${degrees(closesDeg.square)} off the square of the face`;
  if (!isChamfered) return `${closes}.`;
  const sloped =
    closesDeg.chamfered >= 89
      ? 'with their backs chamfered it never quite does'
      : `with their backs chamfered at ${degrees(closesDeg.chamfered)}`;
  const shows =
    differsFromDeg === null
      ? 'The slope never shows: nowhere do the two differ by a tenth of the opening.'
      : `The slope shows from ${degrees(differsFromDeg)} on, and most at ${degrees(most.angleDeg)}, where it opens ${Math.round(100 * most.share)} in 100 of the width.`;
  return `${closes}, ${sloped}. ${shows}`;
}

/** What is seen at an angle, for a line beside the drawing. */
export function seenWords(curve: SeeThrough['curve'], angleDeg: number, isChamfered: boolean): string {
  const { square, chamfered } = openAt(curve, angleDeg);
  const share = (value: number) => (value <= 0 ? 'nothing' : `${Math.round(100 * value)} in 100`);
  const plain = `At ${angleDeg}°, ${share(square)} of the opening is seen through with square edges`;
  return isChamfered ? `${plain}, ${share(chamfered)} with the slope.` : `${plain}.`;
}

function degrees(value: number): string {
  return `${Math.round(value)}°`;
}
