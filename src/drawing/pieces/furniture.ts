import type { Stroke, StrokeKind } from '../../knowledge/signDrawingSchema.ts';
import { box } from './faces.ts';
import { short } from './unevenness.ts';

/** A chair from in front, by its upper left corner: posts, crest, two slats, seat, legs and a stretcher. */
export function chair(
  face: StrokeKind,
  [x = 0, y = 0, width = 20, height = 44]: readonly number[],
): Stroke[] {
  const post = width * 0.13;
  const seat = y + height * 0.55;
  const inner = width - 2 * post;
  const slat = (down: number) => box(x + post, y + height * down, inner, height * 0.07);
  return [
    { as: face, d: `${box(x, y, post, height)} ${box(x + width - post, y, post, height)}` },
    { as: face, d: [0.02, 0.18, 0.34].map(slat).join(' ') },
    { as: face, d: box(x + post, y + height * 0.8, inner, height * 0.04) },
    {
      as: face,
      d: `M ${short(x - width * 0.04)} ${short(seat)} h ${short(width * 1.08)} v ${short(height * 0.08)} h ${short(-width * 1.08)} Z`,
    },
  ];
}

/** A chair from the side, its front to the right, by its upper left corner: `rake` is how far the back leans. */
export function sideChair(
  face: StrokeKind,
  [x = 0, y = 0, width = 24, height = 48, rake = 4]: readonly number[],
): Stroke[] {
  const post = width * 0.13;
  const seat = y + height * 0.55;
  const [back, front] = [x + rake, x + width];
  return [
    {
      as: face,
      d: `M ${short(x)} ${short(y)} h ${short(post)} L ${short(back + post)} ${short(seat)} L ${short(x + rake * 0.4 + post)} ${short(y + height)} h ${short(-post)} L ${short(back)} ${short(seat)} Z`,
    },
    { as: face, d: box(front - post, seat, post, height * 0.45) },
    {
      as: face,
      d: `M ${short(back + post)} ${short(y + height * 0.8)} H ${short(front - post)} v ${short(height * 0.04)} H ${short(back + post - rake * 0.1)} Z`,
    },
    { as: face, d: box(back, seat, front - back + post * 0.4, height * 0.09) },
  ];
}

/** A table from in front, by its upper left corner: top, frame and two tapered legs. */
export function table(
  face: StrokeKind,
  [x = 0, y = 0, width = 36, height = 30]: readonly number[],
): Stroke[] {
  const over = width * 0.07;
  const top = height * 0.08;
  const frame = y + height * 0.32;
  const legAt = (from: number) =>
    `M ${short(from)} ${short(frame)} h ${short(width * 0.09)} L ${short(from + width * 0.07)} ${short(y + height)} h ${short(-width * 0.05)} Z`;
  return [
    { as: face, d: `${legAt(x + over)} ${legAt(x + width - over - width * 0.09)}` },
    { as: face, d: box(x + over, y + top, width - 2 * over, frame - y - top) },
    { as: face, d: box(x, y, width, top) },
  ];
}

/** A bracket foot under a case, its outer edge at `x` and its curve toward `x + width`; a negative width mirrors it. */
export function foot(face: StrokeKind, [x = 0, y = 0, width = 14, height = 10]: readonly number[]): Stroke[] {
  const at = (across: number, down: number) => `${short(x + width * across)} ${short(y + height * down)}`;
  return [
    {
      as: face,
      d: `M ${at(0, 0)} L ${at(1, 0)} V ${short(y + height * 0.18)} Q ${at(0.82, 0.2)} ${at(0.74, 0.42)} Q ${at(0.66, 0.34)} ${at(0.54, 0.48)} Q ${at(0.44, 0.66)} ${at(0.44, 1)} L ${at(0, 1)} Z`,
    },
  ];
}
