import { blackSquaresOf, cardPatches, marksOf, scaleCard } from '../photo/geometry/scaleCard.ts';
import { cellsAlongMark, whiteCells } from '../photo/geometry/scaleCardMarks.ts';
import { typstString } from './typst/typstText.ts';

/** The papers the scale card is printed on. */
export type CardPaper = 'a4' | 'letter';

/** Width and height of the paper in mm. */
export const cardPapers: Record<CardPaper, readonly [number, number]> = {
  a4: [210, 297],
  letter: [215.9, 279.4],
};

/** Where the top left corner of the card lies on the paper, in mm. */
export function cardOrigin(paper: CardPaper): [number, number] {
  const [width, height] = cardPapers[paper];
  return [(width - scaleCard.widthMm) / 2, (height - scaleCard.heightMm) / 2];
}

/** The scale card as Typst source: in true size, the same card on both papers. */
export function scaleCardTypst(paper: CardPaper): string {
  const [width, height] = cardPapers[paper];
  const [left, top] = cardOrigin(paper);
  return `#set document(title: ${typstString(scaleCard.name)}, author: (), date: none)
#set page(width: ${width}mm, height: ${height}mm, margin: (left: ${left}mm, top: ${top}mm, right: 0mm, bottom: 0mm))
#set text(font: "Source Sans 3", size: 9pt, fill: black, lang: "en", region: "US", hyphenate: false)
#set par(leading: 0.5em, spacing: 0.6em)
#let box-at(x, y, w, h, tone) = place(top + left, dx: x * 1mm, dy: y * 1mm, rect(width: w * 1mm, height: h * 1mm, fill: tone, stroke: none))
#let words-at(x, y, w, side, body) = place(top + left, dx: x * 1mm, dy: y * 1mm, block(width: w * 1mm, align(side + top, body)))
#pdf.artifact({
${[...boardLines(), ...patchLines(), ...rulerLines(), ...checkLines()].join('\n')}
})
${wordLines().join('\n')}
`;
}

function boxAt(x: number, y: number, width: number, height: number, tone = 'black'): string {
  return `  box-at(${[x, y, width, height].map((value) => Number(value.toFixed(5))).join(', ')}, ${tone})`;
}

function boardLines(): string[] {
  return scaleCard.boards.flatMap((board) => [
    ...blackSquaresOf(board).map(([x, y]) => boxAt(x, y, board.squareMm, board.squareMm)),
    ...marksOf(board).flatMap(({ number, xMm, yMm, sideMm }) => {
      const cell = sideMm / cellsAlongMark;
      return [
        boxAt(xMm, yMm, sideMm, sideMm),
        ...runs(whiteCells(number)).map(([x, y, wide, high]) =>
          boxAt(xMm + x * cell, yMm + y * cell, wide * cell, high * cell, 'white'),
        ),
      ];
    }),
  ]);
}

/** White cells as runs along and across, which cover each other, so that no hairline shows between two cells. */
function runs(white: readonly [number, number][]): [number, number, number, number][] {
  const has = (x: number, y: number) => white.some(([column, row]) => column === x && row === y);
  const length = (x: number, y: number, dx: number, dy: number): number =>
    has(x, y) ? 1 + length(x + dx, y + dy, dx, dy) : 0;
  return white.flatMap(([x, y]) => [
    ...(has(x - 1, y) ? [] : [[x, y, length(x, y, 1, 0), 1] as [number, number, number, number]]),
    ...(has(x, y - 1) ? [] : [[x, y, 1, length(x, y, 0, 1)] as [number, number, number, number]]),
  ]);
}

/** Greys of the black ink alone, as far as the printer lets us. */
function patchLines(): string[] {
  return cardPatches.map(({ kind, xMm, yMm, widthMm, heightMm, srgb }) => {
    const tone = kind === 'grey' ? `luma(${Number.parseInt(srgb.slice(1, 3), 16)})` : `rgb("${srgb}")`;
    return boxAt(xMm, yMm, widthMm, heightMm, tone);
  });
}

const tickMm = 0.18;
const inchMm = 25.4;

/** Ticks lie with their middles on their places: millimetres up from the line, sixteenths of an inch down. */
function rulerLines(): string[] {
  const { xMm, yMm, lengthMm, sixteenths } = scaleCard.ruler;
  const up = Array.from({ length: lengthMm + 1 }, (_, i) => {
    const high = i % 10 === 0 ? 6 : i % 5 === 0 ? 4.5 : 3;
    return boxAt(xMm + i - tickMm / 2, yMm - high, tickMm, high);
  });
  const down = Array.from({ length: sixteenths + 1 }, (_, i) => {
    const high = i % 16 === 0 ? 7.5 : i % 8 === 0 ? 6 : i % 4 === 0 ? 4.8 : i % 2 === 0 ? 3.6 : 2.4;
    return boxAt(xMm + (i * inchMm) / 16 - tickMm / 2, yMm, tickMm, high);
  });
  return [boxAt(xMm - tickMm / 2, yMm - tickMm / 2, lengthMm + tickMm, tickMm), ...up, ...down];
}

function checkLines(): string[] {
  const { xMm, yMm, lengthMm } = scaleCard.checkLine;
  const endTick = (x: number) => boxAt(x - tickMm / 2, yMm - 2.5, tickMm, 5);
  return [boxAt(xMm, yMm - tickMm, lengthMm, 2 * tickMm), endTick(xMm), endTick(xMm + lengthMm)];
}

function wordLines(): string[] {
  const { ruler, checkLine } = scaleCard;
  const at = (x: number, y: number, width: number, side: string, words: string, style = '') =>
    `#words-at(${x}, ${y}, ${width}, ${side}, text(${style}${typstString(words)}))`;
  const centimetres = Array.from({ length: ruler.lengthMm / 10 + 1 }, (_, i) =>
    at(ruler.xMm + 10 * i - 5, ruler.yMm - 10, 10, 'center', i === 0 ? '0 cm' : String(i), 'size: 7.5pt, '),
  );
  const inches = Array.from({ length: Math.floor(ruler.sixteenths / 16) + 1 }, (_, i) =>
    at(
      ruler.xMm + inchMm * i - 5,
      ruler.yMm + 8.3,
      10,
      'center',
      i === 0 ? '0 in' : String(i),
      'size: 7.5pt, ',
    ),
  );
  return [
    ...centimetres,
    ...inches,
    `#words-at(15, 145, 150, left, [
  #title(text(size: 12pt, weight: 600, ${typstString(scaleCard.name)}))
  #par(text(weight: 600, ${typstString(`Before use, measure the line above with a rule: it must be ${checkLine.words}.`)}))
  #par(text(${typstString(`From the top edge of the upper board to the bottom edge of the lower one it must be ${scaleCard.heightMm}.0 mm, or 9 27/32 in. If not, print again at 100 %, without “fit to page”.`)}))
  #par(text(${typstString('In use, lay the card flat in the plane that is to be measured, close to it, both boards in the picture, without glare or folds. Stiffen it with card; glue it to nothing of the piece.')}))
  #par(text(${typstString('The gray and colored patches balance color; printers differ, so trust the grays more than the colors.')}))
])`,
  ];
}
