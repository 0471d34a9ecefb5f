import type { Stroke, StrokeKind } from '../../knowledge/signDrawingSchema.ts';
import { ellipse } from './faces.ts';
import { evenly, short, unevenness } from './unevenness.ts';

/** A row of holes of one size, evenly spaced from the first to the last. */
export function holes(
  face: StrokeKind,
  [fromX = 0, fromY = 0, toX = 0, toY = 0, count = 2, radius = 1]: readonly number[],
): Stroke[] {
  const each = Array.from({ length: count }, (_, index) => index / Math.max(1, count - 1));
  const d = each.map((share) =>
    ellipse(fromX + (toX - fromX) * share, fromY + (toY - fromY) * share, radius),
  );
  return [{ as: face, d: d.join(' ') }];
}

/** Round holes of slightly different size, scattered without order over a face. */
export function specks(
  face: StrokeKind,
  [x = 0, y = 0, width = 0, height = 0, count = 1, radius = 1]: readonly number[],
): Stroke[] {
  const at = unevenness(x * 13 + y * 7 + count);
  const d = Array.from({ length: count }, (_, index) => {
    // Each has a strip of its own, so that no two lie on one another.
    const across = x + (width * (index + 0.2 + 0.6 * at())) / count;
    return ellipse(across, y + radius + (height - 2 * radius) * at(), radius * (0.75 + 0.5 * at()));
  });
  return [{ as: face, d: d.join(' ') }];
}

/** Upright lines a machine left: one distance, one direction. */
export function straightLines([x = 0, y = 0, width = 0, height = 0, gap = 3]: readonly number[]): Stroke[] {
  const d = evenly(x, width, Math.max(1, Math.round(width / gap))).map(
    (line) => `M ${short(line)} ${short(y)} v ${short(height)}`,
  );
  return [{ as: 'thin', d: d.join(' ') }];
}

/** Slanting lines a hand left: distance and slant change from stroke to stroke. */
export function unevenLines([x = 0, y = 0, width = 0, height = 0, gap = 3]: readonly number[]): Stroke[] {
  const at = unevenness(x * 3 + y + width * 17);
  const lean = Math.min(width * 0.12, height * 0.25);
  const d = evenly(x, width - lean, Math.max(1, Math.round((width - lean) / gap))).map((line) => {
    const from = Math.max(x, line + (at() - 0.5) * gap * 0.7);
    const to = from + lean * (0.4 + 0.6 * at());
    return `M ${short(from)} ${short(y + height)} L ${short(to)} ${short(y)}`;
  });
  return [{ as: 'thin', d: d.join(' ') }];
}

/** Curved lines of one radius, one behind another, cut off at the edges of the face. */
export function arcs([
  x = 0,
  y = 0,
  width = 0,
  height = 0,
  radius = 60,
  gap = 4,
]: readonly number[]): Stroke[] {
  const middle = y + height / 2;
  const bulge = radius - Math.sqrt(Math.max(0, radius ** 2 - (height / 2) ** 2));
  const d: string[] = [];
  for (let right = x + bulge + gap / 2; right <= x + width; right += gap)
    d.push(
      `M ${short(right - bulge)} ${short(y)} Q ${short(right + bulge)} ${short(middle)} ${short(right - bulge)} ${short(y + height)}`,
    );
  return [{ as: 'thin', d: d.join(' ') }];
}

/** Short scratches in every direction. */
export function scratches([x = 0, y = 0, width = 0, height = 0, count = 8]: readonly number[]): Stroke[] {
  const at = unevenness(x + y * 5 + count * 3);
  const d = Array.from({ length: count }, (_, index) => {
    const from = [x + (width * (index + at())) / count, y + height * at()] as const;
    const to = [from[0] + (at() - 0.5) * 9, from[1] + (at() - 0.5) * 7] as const;
    const within = (value: number, start: number, length: number) =>
      short(Math.min(Math.max(value, start), start + length));
    return `M ${within(from[0], x, width)} ${within(from[1], y, height)} L ${within(to[0], x, width)} ${within(to[1], y, height)}`;
  });
  return [{ as: 'thin', d: d.join(' ') }];
}

/** The shallow overlapping hollows of a gouge, adze or drawknife, no two alike. */
export function facets([
  x = 0,
  y = 0,
  width = 0,
  height = 0,
  columns = 4,
  rows = 3,
]: readonly number[]): Stroke[] {
  const at = unevenness(x * 2 + y * 9 + columns);
  const [step, drop] = [width / columns, height / rows];
  const d: string[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const left = x + column * step + step * 0.12 * at();
      const top = y + row * drop + drop * (0.3 + 0.35 * at());
      d.push(
        `M ${short(left)} ${short(top)} q ${short(step * 0.45)} ${short(drop * (0.35 + 0.25 * at()))} ${short(step * 0.85)} 0`,
      );
    }
  return [{ as: 'thin', d: d.join(' ') }];
}

/** A net of cracks in a film: meshes of unequal size. */
export function crackle([
  x = 0,
  y = 0,
  width = 0,
  height = 0,
  columns = 6,
  rows = 4,
]: readonly number[]): Stroke[] {
  const at = unevenness(x + y + columns * rows);
  const corner = Array.from({ length: rows + 1 }, (_, row) =>
    Array.from({ length: columns + 1 }, (__, column) => {
      const inner = (index: number, last: number) =>
        index === 0 || index === last ? 0 : (at() - 0.5) * 0.75;
      return [
        short(x + ((column + inner(column, columns)) * width) / columns),
        short(y + ((row + inner(row, rows)) * height) / rows),
      ] as const;
    }),
  );
  const d: string[] = [];
  corner.forEach((line, row) => {
    line.forEach(([fromX, fromY], column) => {
      const right = row > 0 && row < rows ? line[column + 1] : undefined;
      const below = column > 0 && column < columns ? corner[row + 1]?.[column] : undefined;
      for (const to of [right, below])
        if (to !== undefined && at() > 0.12) d.push(`M ${fromX} ${fromY} L ${to[0]} ${to[1]}`);
    });
  });
  return [{ as: 'thin', d: d.join(' ') }];
}
