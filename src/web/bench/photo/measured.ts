import { photoMeasure } from '../../../calculations/photoMeasure.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import { told } from '../../../units/doubt.ts';
import type { BoardMark } from '../../board/boardMark.ts';
import { runHere } from '../runHere.ts';
import { fittedMark } from './fittedMark.ts';
import type { Measured } from './measuredSize.ts';
import { measureInput, type PhotoScale } from './photoScale.ts';
import { withDoubt } from './withDoubt.ts';

/** What a mark on a photo measures. */
export type MeasureKind = 'length' | 'angle' | 'circle' | 'ellipse';

/** Which measure a mark is, by its id: `length-2`; undefined for marks of the scale. */
export function measureKindOf({ id }: Pick<BoardMark, 'id'>): MeasureKind | undefined {
  return (['length', 'angle', 'circle', 'ellipse'] as const).find((kind) => id.startsWith(`${kind}-`));
}

/** A mark measured by the scale of its picture, with its doubt. */
export function measuredMark(
  mark: BoardMark,
  scale: PhotoScale,
  sigmaPx: number,
  knowledge: Knowledge,
): Measured | undefined {
  const kind = measureKindOf(mark);
  if (kind === undefined) return undefined;
  return kind === 'length' || kind === 'angle'
    ? byLines(kind, mark, scale, sigmaPx, knowledge)
    : fittedMark(kind, mark, scale, sigmaPx, knowledge);
}

function byLines(
  kind: 'length' | 'angle',
  { points }: BoardMark,
  scale: PhotoScale,
  sigmaPx: number,
  knowledge: Knowledge,
): Measured | undefined {
  const [a, b, c, d] = points;
  if (a === undefined || b === undefined) return undefined;
  const second = kind === 'length' || c === undefined || d === undefined ? undefined : ([c, d] as const);
  const input = measureInput(scale, [a, b], sigmaPx, second);
  const result = runHere(photoMeasure, input, knowledge);
  if (!result.ok) return result;
  const { lengthMm, sigmaMm, angleDeg, angleSigmaDeg, says } = result.output;
  const words =
    angleDeg === undefined || angleSigmaDeg === undefined
      ? withDoubt(lengthMm, sigmaMm)
      : `${angleDeg.toFixed(1)}°, give or take ${told(angleSigmaDeg).toFixed(1)}°`;
  return {
    ok: true,
    says: words,
    found: { calculation: photoMeasure, input, output: result.output, says: `${words}. ${says.join(' ')}` },
    ...(kind === 'length' ? { length: { mm: lengthMm, sigmaMm } } : {}),
  };
}
