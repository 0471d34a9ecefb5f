import type { Point } from '../picture.ts';

/**
 * The printed scale card: what lies where on it, in millimetres from its top left corner, x to the right and y down. The printed
 * page, the finder in a photograph and the balance of colours all read it here. A card that is changed gets a new name: old
 * prints stay in use.
 */
export const scaleCard = {
  name: 'Underside scale card 1',
  widthMm: 180,
  heightMm: 250,
  /** Chessboards with a mark in each white square, an open standard (ChArUco, dictionary 4×4_50); the top left square is black. */
  boards: [
    { xMm: 0, yMm: 0, columns: 9, rows: 3, squareMm: 20, markMm: 15, firstMark: 0 },
    { xMm: 0, yMm: 190, columns: 9, rows: 3, squareMm: 20, markMm: 15, firstMark: 13 },
  ],
  /** Both scales start at the same line and run along the same edge, millimetres above it and inches below. */
  ruler: { xMm: 10, yMm: 78, lengthMm: 160, sixteenths: 100 },
  /** To be measured with a rule before the card is used: from the middle of one end tick to the middle of the other. */
  checkLine: { xMm: 15, yMm: 141, lengthMm: 150, words: '150.0 mm, or 5 29/32 in' },
} as const;

/** One of the card’s chessboards. */
export type CardBoard = (typeof scaleCard.boards)[number];

/** A patch of flat colour on the card: its place in mm, and the colour that is sent to the printer. */
export type CardPatch = {
  id: string;
  kind: 'grey' | 'colour';
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
  /**
   * Nominal sRGB, #rrggbb. What the printer makes of it is another matter: greys of one ink stay nearly neutral, colours can be off
   * by much. For more than a balance of neutral tones measure the printed patches.
   */
  srgb: string;
};

const patchAt = (id: string, kind: CardPatch['kind'], column: number, srgb: string): CardPatch => ({
  id,
  kind,
  xMm: 2.5 + column * 30,
  yMm: kind === 'grey' ? 96 : 115,
  widthMm: 25,
  heightMm: 16,
  srgb,
});

/** The patches, light to dark greys first. */
export const cardPatches: readonly CardPatch[] = [
  ...['#f0f0f0', '#c8c8c8', '#a0a0a0', '#7a7a7a', '#555555', '#343434'].map((srgb, i) =>
    patchAt(`grey-${i + 1}`, 'grey', i, srgb),
  ),
  ...[
    ['red', '#a03c3c'],
    ['brown', '#96642f'],
    ['ochre', '#d2b04c'],
    ['green', '#4d7f4a'],
    ['blue', '#3f6596'],
    ['plum', '#6b4a5e'],
  ].map(([id, srgb], i) => patchAt(id as string, 'colour', i, srgb as string)),
];

/** A square mark on the card: its number, and its top left corner and side in mm. */
export type CardMark = { number: number; xMm: number; yMm: number; sideMm: number };

/** The marks of a board: one in the middle of each white square, numbered row by row. */
export function marksOf({ xMm, yMm, columns, rows, squareMm, markMm, firstMark }: CardBoard): CardMark[] {
  const white = squaresOf(columns, rows).filter(([column, row]) => (column + row) % 2 === 1);
  const inset = (squareMm - markMm) / 2;
  return white.map(([column, row], i) => ({
    number: firstMark + i,
    xMm: xMm + column * squareMm + inset,
    yMm: yMm + row * squareMm + inset,
    sideMm: markMm,
  }));
}

/** The top left corners of a board’s black squares, in mm. */
export function blackSquaresOf({ xMm, yMm, columns, rows, squareMm }: CardBoard): Point[] {
  const black = squaresOf(columns, rows).filter(([column, row]) => (column + row) % 2 === 0);
  return black.map(([column, row]): Point => [xMm + column * squareMm, yMm + row * squareMm]);
}

/** Where the squares of a board meet, in mm, row by row: what the finder finds. */
export function cornersOf({ xMm, yMm, columns, rows, squareMm }: CardBoard): Point[] {
  return squaresOf(columns - 1, rows - 1).map(
    ([column, row]): Point => [xMm + (column + 1) * squareMm, yMm + (row + 1) * squareMm],
  );
}

function squaresOf(columns: number, rows: number): [number, number][] {
  return Array.from({ length: rows * columns }, (_, i) => [i % columns, Math.floor(i / columns)]);
}
