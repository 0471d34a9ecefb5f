/**
 * The inner 4 × 4 cells of the marks, as 16 bits row by row from the top left, 1 for white: numbers 0 to 25 of the open dictionary
 * 4×4_50. A ring of black cells goes round them.
 *
 * @source OpenCV 4.12 (Apache-2.0), DICT_4X4_50; a test holds them against the library
 */
const cells = [
  0xb532, 0x0f9a, 0x332d, 0x9946, 0x549e, 0x79cd, 0x9e2e, 0xc4f2, 0xfeda, 0xcf56, 0xf991, 0x11a7, 0x0eb7,
  0x2a0f, 0x24b1, 0x263e, 0x4665, 0x6600, 0x6c5e, 0x76af, 0x868b, 0xb02b, 0xccd5, 0xdd82, 0xfe47, 0x9471,
];

/** Cells along a side of a mark, the black ring included. */
export const cellsAlongMark = 6;

/**
 * Which cells of a mark are white, as [column, row] among 6 × 6.
 *
 * @throws RangeError for a number the card has no mark of
 */
export function whiteCells(number: number): [number, number][] {
  const bits = cells[number];
  if (bits === undefined)
    throw new RangeError(`whiteCells needs a number from 0 to ${cells.length - 1}, got ${number}`);
  return Array.from({ length: 16 }, (_, i): [number, number] => [1 + (i % 4), 1 + Math.floor(i / 4)]).filter(
    (_, i) => ((bits >> (15 - i)) & 1) === 1,
  );
}
