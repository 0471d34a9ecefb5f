import type { Stroke, StrokeKind } from '../../knowledge/signDrawingSchema.ts';
import { short } from './unevenness.ts';

/** A wood screw from the side, its head up, by the middle of its head: countersunk head, shank, even thread, point. */
export function screw(face: StrokeKind, [x = 0, y = 0, length = 30, head = 10]: readonly number[]): Stroke[] {
  const [half, shank] = [head / 2, head * 0.24];
  const [neck, point] = [y + head * 0.35, y + length - head * 0.5];
  const turns = Math.max(3, Math.round((point - neck) / (head * 0.55)));
  const rows = Array.from({ length: turns }, (_, index) => neck + ((index + 0.6) * (point - neck)) / turns);
  const lean = head * 0.12;
  return [
    {
      as: face,
      d: `M ${short(x - half)} ${short(y)} h ${short(head)} L ${short(x + shank)} ${short(neck)} V ${short(point)} L ${short(x)} ${short(y + length)} L ${short(x - shank)} ${short(point)} V ${short(neck)} Z`,
    },
    {
      as: 'line',
      d: rows
        .map(
          (row) =>
            `M ${short(x - shank * 1.5)} ${short(row + lean)} L ${short(x + shank * 1.5)} ${short(row - lean)}`,
        )
        .join(' '),
    },
  ];
}

/** A nail from the side, its head up, by the middle of its head: a flat head, a shank that tapers to `end` across. */
export function nail(
  face: StrokeKind,
  [x = 0, y = 0, length = 30, head = 6, shank = 2.4, end = 1]: readonly number[],
): Stroke[] {
  const thick = Math.min(1.4, head * 0.3);
  return [
    {
      as: face,
      d: `M ${short(x - head / 2)} ${short(y)} h ${short(head)} v ${short(thick)} H ${short(x + shank / 2)} L ${short(x + end / 2)} ${short(y + length - end * 0.6)} L ${short(x)} ${short(y + length)} L ${short(x - end / 2)} ${short(y + length - end * 0.6)} L ${short(x - shank / 2)} ${short(y + thick)} H ${short(x - head / 2)} Z`,
    },
  ];
}

/** A coil spring from the side, narrow in the middle. */
export function coil([x = 0, y = 0, width = 16, height = 24, turns = 5]: readonly number[]): Stroke[] {
  const half = (row: number) => (width / 2) * (0.62 + 0.38 * Math.abs(1 - (2 * row) / turns));
  const middle = x + width / 2;
  const step = height / turns;
  const d = Array.from({ length: turns }, (_, row) => {
    const [top, low] = [y + row * step, y + (row + 1) * step];
    return `L ${short(middle + half(row + 0.5))} ${short(top + step * 0.35)} L ${short(middle - half(row + 1))} ${short(low)}`;
  });
  return [{ as: 'line', d: `M ${short(middle - half(0))} ${short(y)} ${d.join(' ')}` }];
}
