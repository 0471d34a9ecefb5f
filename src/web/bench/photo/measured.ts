import type { Fault } from '../../../calculations/define.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import type { Json } from '../../../piece/event.ts';
import { formatBoth, formatInches } from '../../../units/length.ts';
import type { Found } from '../benchRoom.ts';
import { runHere } from '../runHere.ts';
import type { BoardMark } from './boardMark.ts';
import { inMillimetres, measureInput, mmPerPxAt, type PhotoScale } from './photoScale.ts';

/** What a mark on a photo measures. */
export type MeasureKind = 'length' | 'angle' | 'circle' | 'ellipse';

export type Measured =
  | { ok: true; found: Found; says: string; length?: { mm: number; sigmaMm: number } }
  | { ok: false; faults: Fault[] };

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
    : byFit(kind, mark, scale, sigmaPx, knowledge);
}

/** A length with its standard uncertainty, in inches and millimetres. */
export function withDoubt(mm: number, sigmaMm: number): string {
  const small =
    sigmaMm < 25.4 / 64 ? 'less than 1/64 in' : `${formatInches(sigmaMm, { denominator: 64 })} in`;
  const places = sigmaMm < 1 ? 2 : 1;
  return `${formatInches(mm, { denominator: 64 })} in (${mm.toFixed(places)} mm), give or take ${sigmaMm.toFixed(places)} mm (${small})`;
}

type Lines = { lengthMm: number; sigmaMm: number; angleDeg?: number; angleSigmaDeg?: number; says: string[] };

function byLines(
  kind: 'length' | 'angle',
  { points }: BoardMark,
  scale: PhotoScale,
  sigmaPx: number,
  knowledge: Knowledge,
): Measured {
  const second = kind === 'angle' ? points.slice(2) : undefined;
  const input = measureInput(scale, points.slice(0, 2), sigmaPx, second);
  const result = runHere<Lines>('photo.measure', input, knowledge);
  if (!result.ok) return result;
  const { lengthMm, sigmaMm, angleDeg, angleSigmaDeg, says } = result.output;
  const words =
    angleDeg === undefined || angleSigmaDeg === undefined
      ? withDoubt(lengthMm, sigmaMm)
      : `${angleDeg.toFixed(1)}°, give or take ${angleSigmaDeg.toFixed(1)}°`;
  return {
    ok: true,
    says: words,
    found: found('photo.measure', input, result.output, `${words}. ${says.join(' ')}`),
    ...(kind === 'length' ? { length: { mm: lengthMm, sigmaMm } } : {}),
  };
}

type Fitted = {
  radius?: number;
  sigma?: unknown;
  semiMajor?: number;
  semiMinor?: number;
  residualRms: number;
};

function byFit(
  kind: 'circle' | 'ellipse',
  { points }: BoardMark,
  scale: PhotoScale,
  sigmaPx: number,
  knowledge: Knowledge,
): Measured {
  const placed = inMillimetres(scale, points, knowledge);
  if (!placed.ok) return placed;
  const middle = points.reduce(
    ([x, y], [px, py]) => [x + px / points.length, y + py / points.length],
    [0, 0],
  );
  const perPx = mmPerPxAt(scale, middle, knowledge);
  const id = `photo.${kind}`;
  const input = {
    points: placed.output,
    ...(kind === 'circle' && perPx !== undefined ? { sigmaPoint: sigmaPx * perPx } : {}),
    ...(kind === 'ellipse' ? { method: 'geometric' } : {}),
  };
  const result = runHere<Fitted>(id, input, knowledge);
  if (!result.ok) return result;
  const words = kind === 'circle' ? circleWords(result.output) : ellipseWords(result.output);
  const limits = `Fitted to ${points.length} marks, ${result.output.residualRms.toFixed(2)} mm off it in the root mean square; the doubt of the scale itself is not in it.`;
  const diameter = kind === 'circle' ? (result.output.radius ?? 0) * 2 : undefined;
  const sigma = typeof result.output.sigma === 'number' ? result.output.sigma * 2 : undefined;
  return {
    ok: true,
    says: words,
    found: found(id, input, result.output, `${words}. ${limits}`),
    ...(diameter !== undefined && sigma !== undefined ? { length: { mm: diameter, sigmaMm: sigma } } : {}),
  };
}

function circleWords({ radius = 0, sigma }: Fitted): string {
  return typeof sigma === 'number'
    ? `Diameter ${withDoubt(2 * radius, 2 * sigma)}`
    : `Diameter ${formatBoth(2 * radius, { denominator: 64 })}; how sure can’t be told from so few marks`;
}

function ellipseWords({ semiMajor = 0, semiMinor = 0, sigma }: Fitted): string {
  const of = sigma as { semiMajor: number; semiMinor: number } | undefined;
  const axis = (half: number, halfSigma: number | undefined) =>
    halfSigma === undefined ? formatBoth(2 * half, { denominator: 64 }) : withDoubt(2 * half, 2 * halfSigma);
  return `Long axis ${axis(semiMajor, of?.semiMajor)}; short axis ${axis(semiMinor, of?.semiMinor)}`;
}

function found(calculation: string, input: unknown, output: unknown, says: string): Found {
  return { calculation, input: input as Json, output: output as Json, says };
}
