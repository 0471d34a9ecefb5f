import type { Stroke, StrokeKind } from '../../knowledge/signDrawingSchema.ts';
import { box, ellipse } from './faces.ts';
import { short } from './unevenness.ts';

/** The front of a case with drawers one above another, two knobs on each. */
export function drawers(
  face: StrokeKind,
  [x = 0, y = 0, width = 0, height = 0, count = 3]: readonly number[],
): Stroke[] {
  const edge = Math.min(width, height) * 0.06;
  const each = (height - edge) / count;
  const rows = Array.from({ length: count }, (_, index) => y + edge + index * each);
  const inner = { x: x + edge, width: width - 2 * edge, height: each - edge };
  return [
    { as: face, d: box(x, y, width, height) },
    { as: 'line', d: rows.map((row) => box(inner.x, row, inner.width, inner.height)).join(' ') },
    {
      as: 'line',
      d: rows
        .flatMap((row) =>
          [0.24, 0.76].map((share) =>
            ellipse(inner.x + inner.width * share, row + inner.height / 2, Math.max(0.5, edge * 0.55)),
          ),
        )
        .join(' '),
    },
  ];
}

/** A leg square at its top and tapered to its foot, by the middle of its top. */
export function leg(
  face: StrokeKind,
  [x = 0, y = 0, height = 0, top = 8, foot = 5]: readonly number[],
): Stroke[] {
  const left = (width: number) => short(x - width / 2);
  const block = short(y + height * 0.25);
  return [
    {
      as: face,
      d: `M ${left(top)} ${short(y)} h ${short(top)} V ${block} L ${left(-foot)} ${short(y + height)} h ${short(-foot)} L ${left(top)} ${block} Z`,
    },
    {
      as: 'thin',
      d: `M ${short(x - top * 0.2)} ${short(y + height * 0.05)} L ${short(x - foot * 0.2)} ${short(y + height * 0.94)} M ${short(x + top * 0.22)} ${short(y + height * 0.08)} L ${short(x + foot * 0.22)} ${short(y + height * 0.9)}`,
    },
  ];
}

/** How far a turning stands out from its axis, from its top to its foot: block, ring, vase, ring, reel and foot. */
const profile: readonly (readonly [number, number])[] = [
  [0, 0.55],
  [0.08, 0.55],
  [0.1, 0.85],
  [0.14, 0.85],
  [0.16, 0.5],
  [0.24, 0.42],
  [0.5, 0.95],
  [0.6, 1],
  [0.68, 0.6],
  [0.7, 0.9],
  [0.74, 0.9],
  [0.76, 0.5],
  [0.88, 0.62],
  [1, 0.45],
];

/** A turned leg or pillar with rings and a vase, by the middle of its top. */
export function turning(
  face: StrokeKind,
  [x = 0, y = 0, height = 0, radius = 5]: readonly number[],
): Stroke[] {
  const side = (sign: 1 | -1) =>
    profile.map(([down, out]) => `${short(x + sign * out * radius)} ${short(y + down * height)}`);
  const lines = [0.1, 0.14, 0.7, 0.74].map(
    (down) => `M ${short(x - 0.85 * radius)} ${short(y + down * height)} h ${short(1.7 * radius)}`,
  );
  return [
    { as: face, d: `M ${side(1).join(' L ')} L ${side(-1).toReversed().join(' L ')} Z` },
    { as: 'thin', d: lines.join(' ') },
  ];
}
