import type { Region } from '../../photo/picture.ts';

/** What of a picture a calculation has to see, its input counted from there, and the way back for places in its output. */
export type Crop = { box: Region; input: unknown; back: (output: unknown) => unknown };

/**
 * The part of a picture that an input asks about, so that only it needs to be held at full size.
 *
 * Method: the smallest rectangle around every region of the input and every outline of a strip; their places are counted from
 * its top left corner. Where the input names no region it is the whole picture. Calculations look at nothing outside their
 * regions, so that the result is the same, by test.
 *
 * @param size  of the whole picture, pixels
 */
export function cropFor(input: unknown, size: { widthPx: number; heightPx: number }): Crop {
  const boxes: Region[] = [];
  shifted(input, 0, 0, (box) => boxes.push(box));
  if (boxes.length === 0) return { box: { x: 0, y: 0, ...size }, input, back: (output) => output };
  const [x, y] = [Math.min(...boxes.map((box) => box.x)), Math.min(...boxes.map((box) => box.y))];
  const right = Math.max(...boxes.map((box) => box.x + box.widthPx));
  const bottom = Math.max(...boxes.map((box) => box.y + box.heightPx));
  const box = {
    x: Math.max(0, x),
    y: Math.max(0, y),
    widthPx: Math.min(size.widthPx, right) - Math.max(0, x),
    heightPx: Math.min(size.heightPx, bottom) - Math.max(0, y),
  };
  return {
    box,
    input: shifted(input, -box.x, -box.y),
    back: (output) => placedBack(output, box.x, box.y),
  };
}

/** A copy with every region and every outline moved; tells the rectangle around each. */
function shifted(value: unknown, dx: number, dy: number, tell: (box: Region) => void = () => {}): unknown {
  if (Array.isArray(value)) return value.map((each) => shifted(each, dx, dy, tell));
  if (typeof value !== 'object' || value === null) return value;
  if (isRegion(value)) {
    tell(value);
    return { ...value, x: value.x + dx, y: value.y + dy };
  }
  if ('points' in value && Array.isArray(value.points)) {
    const points = value.points as [number, number][];
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const [x, y] = [Math.floor(Math.min(...xs)), Math.floor(Math.min(...ys))];
    tell({ x, y, widthPx: Math.ceil(Math.max(...xs)) - x, heightPx: Math.ceil(Math.max(...ys)) - y });
    return { ...value, points: points.map(([px, py]) => [px + dx, py + dy]) };
  }
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, shifted(each, dx, dy, tell)]));
}

function isRegion(value: object): value is Region {
  return 'x' in value && 'y' in value && 'widthPx' in value && 'heightPx' in value;
}

/** The squares of a map of the grain are placed in the picture; no other output holds places. */
function placedBack(output: unknown, dx: number, dy: number): unknown {
  const map = (output as { map?: { cells?: { x: number; y: number }[] } } | null)?.map;
  if (map?.cells === undefined) return output;
  const cells = map.cells.map((cell) => ({ ...cell, x: cell.x + dx, y: cell.y + dy }));
  return { ...(output as object), map: { ...map, cells } };
}
