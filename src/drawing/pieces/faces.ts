import type { Stroke, StrokeKind } from '../../knowledge/signDrawingSchema.ts';
import { evenly, short, unevenness } from './unevenness.ts';

/** A rectangle as path data. */
export function box(x: number, y: number, width: number, height: number): string {
  return `M ${short(x)} ${short(y)} h ${short(width)} v ${short(height)} h ${short(-width)} Z`;
}

/** An ellipse as path data. */
export function ellipse(x: number, y: number, across: number, down = across): string {
  const [rx, ry] = [short(across), short(down)];
  return `M ${short(x - rx)} ${short(y)} a ${rx} ${ry} 0 1 0 ${short(2 * rx)} 0 a ${rx} ${ry} 0 1 0 ${short(-2 * rx)} 0 Z`;
}

/** A face of wood with its grain from left to right. */
export function board(face: StrokeKind, x: number, y: number, width: number, height: number): Stroke[] {
  const at = unevenness(x * 7 + y * 3 + width);
  const lines = evenly(y, height, Math.max(1, Math.round(height / 5))).map((line) => {
    const [from, to] = [x + width * (0.03 + 0.12 * at()), x + width * (0.85 + 0.12 * at())];
    return `M ${short(from)} ${short(line)} Q ${short(x + width / 2)} ${short(line + at() - 0.5)} ${short(to)} ${short(line)}`;
  });
  return [
    { as: face, d: box(x, y, width, height) },
    { as: 'thin', d: lines.join(' ') },
  ];
}

/** A face of wood with its grain upright. */
export function upright(face: StrokeKind, x: number, y: number, width: number, height: number): Stroke[] {
  const at = unevenness(x * 5 + y * 11 + height);
  const lines = evenly(x, width, Math.max(1, Math.round(width / 5))).map((line) => {
    const [from, to] = [y + height * (0.03 + 0.12 * at()), y + height * (0.85 + 0.12 * at())];
    return `M ${short(line)} ${short(from)} Q ${short(line + at() - 0.5)} ${short(y + height / 2)} ${short(line)} ${short(to)}`;
  });
  return [
    { as: face, d: box(x, y, width, height) },
    { as: 'thin', d: lines.join(' ') },
  ];
}

/** The end of a board: growth rings as shallow arcs one within another. */
export function endGrain(face: StrokeKind, x: number, y: number, width: number, height: number): Stroke[] {
  const count = Math.max(2, Math.round(height / 3));
  const rings = evenly(y, height, count).map((line) => {
    const bow = Math.min(line - y, height / 4);
    return `M ${short(x + width * 0.04)} ${short(line)} Q ${short(x + width / 2)} ${short(line - bow)} ${short(x + width * 0.96)} ${short(line)}`;
  });
  return [
    { as: face, d: box(x, y, width, height) },
    { as: 'thin', d: rings.join(' ') },
  ];
}

/** The edge of a built-up board: layers of one thickness, every other one seen from its end. */
export function plies(x: number, y: number, width: number, height: number, count: number): Stroke[] {
  const each = height / count;
  return Array.from({ length: count }, (_, index) => ({
    as: index % 2 === 0 ? ('wood' as const) : ('dark' as const),
    d: box(x, y + index * each, width, each),
  }));
}

/** Circles one within another: growth rings of a pin's end, marks of a lathe. */
export function rings(x: number, y: number, radius: number, count: number): Stroke[] {
  return [
    {
      as: 'thin',
      d: Array.from({ length: count }, (_, index) => ellipse(x, y, (radius * (index + 1)) / count)).join(' '),
    },
  ];
}
