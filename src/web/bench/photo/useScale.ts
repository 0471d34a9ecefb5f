import { useState } from 'react';
import { photoRectify } from '../../../calculations/photoRectify.ts';
import type { AskedOf } from '../../../calculations/runCalculation.ts';
import type { Fault } from '../../../ground/fault.ts';
import type { Point } from '../../../photo/picture.ts';
import type { Marks } from '../../board/useMarks.ts';
import type { BenchContext } from '../benchContext.ts';
import { runHere } from '../runHere.ts';
import type { PhotoScale } from './photoScale.ts';
import { useCard } from './useCard.ts';
import type { LaidPicture } from './useOpenPicture.ts';

export type ScaleWay = 'card' | 'rectangle' | 'distances' | 'known';

/** What the examiner said of the scale, besides the marks. */
export type ScaleLengths = {
  /** Of the rectangle: from the first mark to the second, and from there to the third. */
  first?: number | undefined;
  second?: number | undefined;
  third?: number | undefined;
  fourth?: number | undefined;
  diagonal?: number | undefined;
  known?: number | undefined;
};

export type Scaling = {
  way: ScaleWay;
  choose: (way: ScaleWay) => void;
  lengths: ScaleLengths;
  say: (lengths: ScaleLengths) => void;
  card: ReturnType<typeof useCard>;
  scale: PhotoScale | undefined;
  faults: Fault[];
};

/**
 * The scale of a picture: by the card, by four points, or by a known length; marks `scale-corners` and `scale-line`.
 *
 * @param sigmaPx  how far such a mark may be out, where the examiner has said it
 */
export function useScale(
  { open }: LaidPicture,
  marks: Marks,
  context: BenchContext,
  sigmaPx: number | undefined,
  first: ScaleWay,
): Scaling {
  const [way, choose] = useState<ScaleWay>(first);
  const [lengths, say] = useState<ScaleLengths>({});
  const card = useCard(open.blob);
  const asked = askedOf({ way, lengths, card }, marks, [open.widthPx, open.heightPx]);
  const rest = { way, choose, lengths, say, card };
  const figures = context.knowledge.measurements?.scale;
  if (figures === undefined) return { ...rest, scale: undefined, faults: [noFigures] };
  if (asked === undefined) return { ...rest, scale: undefined, faults: [] };
  const lensAllowancePercent = figures.lensPercent.value;
  const ruleSigmaMm = figures.ruleMm.value;
  if ('known' in asked)
    return {
      ...rest,
      scale: { kind: 'known', ...asked.known, sigmaMm: ruleSigmaMm, lensAllowancePercent },
      faults: [],
    };
  const result = runHere(photoRectify, asked, context.knowledge);
  if (!result.ok) return { ...rest, scale: undefined, faults: result.faults };
  const { distances: _distances, ...pairs } = asked;
  const world = asked.world ?? result.output.world ?? [];
  const sigmas =
    way === 'card'
      ? { sigmaPx: figures.cardPx.value, sigmaMm: figures.cardMm.value }
      : { sigmaPx: sigmaPx ?? figures.markPx.value, sigmaMm: ruleSigmaMm };
  return {
    ...rest,
    scale: {
      kind: 'plane',
      asked: { ...pairs, world },
      rectified: result.output,
      ...sigmas,
      lensAllowancePercent,
    },
    faults: [],
  };
}

const noFigures: Fault = {
  code: 'bench.no-figures',
  path: '',
  message: 'How sure a scale is can’t be told: measurements.yaml is missing from the knowledge files.',
};

type Asked = { known: { points: readonly [Point, Point]; lengthMm: number } } | AskedOf<typeof photoRectify>;

function askedOf(
  { way, lengths, card }: Pick<Scaling, 'way' | 'lengths' | 'card'>,
  marks: Marks,
  pictureSize: Point,
): Asked | undefined {
  if (way === 'card')
    return card.found?.found ? { image: card.found.image, world: card.found.world, pictureSize } : undefined;
  if (way === 'known') {
    const [a, b] = marks.of('scale-line') ?? [];
    return a === undefined || b === undefined || lengths.known === undefined
      ? undefined
      : { known: { points: [a, b], lengthMm: lengths.known } };
  }
  const image = marks.of('scale-corners');
  const { first, second, third, fourth, diagonal } = lengths;
  if (image === undefined || first === undefined || second === undefined) return undefined;
  if (way === 'rectangle') {
    const world: Point[] = [
      [0, 0],
      [first, 0],
      [first, second],
      [0, second],
    ];
    return { image, world };
  }
  return third === undefined || fourth === undefined || diagonal === undefined
    ? undefined
    : { image, distances: { sides: [first, second, third, fourth], firstDiagonal: diagonal } };
}
