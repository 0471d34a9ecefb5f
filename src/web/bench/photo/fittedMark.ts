import { photoCircle, photoEllipse } from '../../../calculations/photoGeometry.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import type { Point } from '../../../photo/picture.ts';
import { formatBoth } from '../../../units/length.ts';
import type { BoardMark } from '../../board/boardMark.ts';
import type { Found } from '../benchContext.ts';
import { runHere } from '../runHere.ts';
import type { Measured } from './measuredSize.ts';
import { inMillimetres, mmPerPxAt, type PhotoScale, scaleDoubtMm } from './photoScale.ts';
import { withDoubt } from './withDoubt.ts';

type Axis = { mm: number; sigmaMm: number | undefined };

/**
 * A circle or an ellipse through marks, measured by the scale of its picture.
 *
 * Method: the marks are carried to the plane and fitted there. To the doubt of the fit, which is no less than that of the marks, is
 * added what the scale leaves in doubt of a length as long, at the same place.
 *
 * @source the sum in squares after JCGM 100:2008; that the marks of an ellipse of n points leave σ√(2/n) in each half axis, at least, is ours
 */
export function fittedMark(
  kind: 'circle' | 'ellipse',
  { points }: BoardMark,
  scale: PhotoScale,
  sigmaPx: number,
  knowledge: Knowledge,
): Measured {
  const placed = inMillimetres(scale, points, knowledge);
  if (!placed.ok) return placed;
  const middle = points.reduce<Point>(
    ([x, y], [px, py]) => [x + px / points.length, y + py / points.length],
    [0, 0],
  );
  const pointMm = sigmaPx * (mmPerPxAt(scale, middle, knowledge) ?? 0);
  const axis = (centre: Point, half: number, turnDeg: number, fit: number | undefined): Axis => {
    const turn = (turnDeg * Math.PI) / 180;
    const [dx, dy] = [half * Math.cos(turn), half * Math.sin(turn)];
    const ends = [
      [centre[0] - dx, centre[1] - dy],
      [centre[0] + dx, centre[1] + dy],
    ] as const;
    const ofScale = scaleDoubtMm(scale, ends, sigmaPx, knowledge);
    const sigmaMm =
      fit === undefined || ofScale === undefined || pointMm === 0 ? undefined : Math.hypot(2 * fit, ofScale);
    return { mm: 2 * half, sigmaMm };
  };
  const tail = (residualRms: number) =>
    `Fitted to ${points.length} marks, which lie ${residualRms.toFixed(2)} mm off it in the root mean square; the doubt of the scale is counted in.`;
  if (kind === 'circle') {
    const input = { points: placed.output, ...(pointMm > 0 ? { sigmaPoint: pointMm } : {}) };
    const result = runHere(photoCircle, input, knowledge);
    if (!result.ok) return result;
    const { centre, radius, sigma, residualRms } = result.output;
    const across = axis(centre, radius, 0, sigma ?? undefined);
    const says = `Diameter ${axisWords(across)}`;
    return told(photoCircle, input, result.output, says, tail(residualRms), across);
  }
  const input = { points: placed.output, method: 'geometric' as const };
  const result = runHere(photoEllipse, input, knowledge);
  if (!result.ok) return result;
  const { centre, semiMajor, semiMinor, angleDeg, sigma, residualRms } = result.output;
  const least = pointMm * Math.sqrt(2 / points.length);
  const floored = (of: number | undefined) => (of === undefined ? undefined : Math.max(of, least));
  const long = axis(centre, semiMajor, angleDeg, floored(sigma?.semiMajor));
  const short = axis(centre, semiMinor, angleDeg + 90, floored(sigma?.semiMinor));
  const says = `Long axis ${axisWords(long)}; short axis ${axisWords(short)}`;
  return told(photoEllipse, input, result.output, says, tail(residualRms), undefined);
}

function axisWords({ mm, sigmaMm }: Axis): string {
  return sigmaMm === undefined
    ? `${formatBoth(mm, { denominator: 64 })}; how sure can’t be told from so few marks`
    : withDoubt(mm, sigmaMm);
}

function told(
  calculation: Found['calculation'],
  input: unknown,
  output: unknown,
  says: string,
  tail: string,
  across: Axis | undefined,
): Measured {
  return {
    ok: true,
    says,
    found: { calculation, input, output, says: `${says}. ${tail}` },
    ...(across?.sigmaMm === undefined ? {} : { length: { mm: across.mm, sigmaMm: across.sigmaMm } }),
  };
}
