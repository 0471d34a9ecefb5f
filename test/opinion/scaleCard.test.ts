import { beforeAll, describe, expect, test } from 'vitest';
import { makeScaleCard } from '../../src/opinion/makeScaleCard.ts';
import { type CardPaper, cardPapers } from '../../src/opinion/scaleCardTypst.ts';
import { blackSquaresOf, cardPatches, marksOf, scaleCard } from '../../src/photo/geometry/scaleCard.ts';
import { whiteCells } from '../../src/photo/geometry/scaleCardMarks.ts';
import { readPdf } from '../kits/pdfText.ts';
import { type PrintedCard, printedCard } from '../kits/printedCard.ts';

// The printed page at 300 dots to the inch, measured: everything within 0.2 mm of where it should be.

const mostOffMm = 0.2;

describe.each(['a4', 'letter'] as const)('the scale card on %s', (paper: CardPaper) => {
  let card: PrintedCard;
  beforeAll(async () => {
    card = await printedCard(paper, 300);
  });

  test('the page has the size of the paper', async () => {
    const bytes = await makeScaleCard(paper);
    const [page, ...others] = [...readPdf(bytes).objects.values()].flatMap((one) => [
      ...one.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/g),
    ]);
    expect(others).toEqual([]);
    const points = [page?.[1], page?.[2]].map(Number);
    for (const [i, millimetres] of cardPapers[paper].entries())
      expect(Math.abs(((points[i] as number) * 25.4) / 72 - millimetres)).toBeLessThan(0.01);
    expect(Buffer.from(await makeScaleCard(paper)).equals(Buffer.from(bytes))).toBe(true);
  });

  test('every black square has its four edges where they should be', () => {
    let edges = 0;
    for (const board of scaleCard.boards) {
      for (const [x, y] of blackSquaresOf(board)) {
        // Where two black squares meet there is a corner, no edge: a quarter of the way along is clear of it, and of the marks.
        const along = board.squareMm / 4;
        for (const [from, to, wanted] of [
          [[x - 2, y + along], [x + 2, y + along], x],
          [[x + board.squareMm - 2, y + along], [x + board.squareMm + 2, y + along], x + board.squareMm],
          [[x + along, y - 2], [x + along, y + 2], y],
          [[x + along, y + board.squareMm - 2], [x + along, y + board.squareMm + 2], y + board.squareMm],
        ] as const) {
          const upright = from[0] !== to[0] ? 0 : 1;
          const found = from[upright] + edgeAlong(card, from, to);
          expect(Math.abs(found - wanted)).toBeLessThan(mostOffMm);
          edges++;
        }
      }
    }
    expect(edges).toBe(2 * 14 * 4);
  });

  test('every mark shows its own cells', () => {
    for (const { number, xMm, yMm, sideMm } of scaleCard.boards.flatMap((board) => marksOf(board))) {
      const cell = sideMm / 6;
      const white = new Set(whiteCells(number).map(String));
      for (let row = 0; row < 6; row++) {
        for (let column = 0; column < 6; column++) {
          const tone = toneAt(card, xMm + (column + 0.5) * cell, yMm + (row + 0.5) * cell);
          expect([number, column, row, tone > 128]).toEqual([
            number,
            column,
            row,
            white.has(String([column, row])),
          ]);
        }
      }
    }
  });

  test('the ruler’s ticks, millimeters and sixteenths', () => {
    const { xMm, yMm, lengthMm, sixteenths } = scaleCard.ruler;
    const millimetres = Array.from({ length: lengthMm + 1 }, (_, i) => xMm + i);
    const inches = Array.from({ length: sixteenths + 1 }, (_, i) => xMm + (i * 25.4) / 16);
    for (const [places, row] of [
      [millimetres, yMm - 1.5],
      [inches, yMm + 1.5],
    ] as const) {
      for (const place of places)
        expect(Math.abs(darkMiddle(card, place, row, 0.45) - place)).toBeLessThan(mostOffMm);
    }
  });

  test('the line to be checked is as long as its words say', () => {
    const { xMm, yMm, lengthMm, words } = scaleCard.checkLine;
    const [left, right] = [xMm, xMm + lengthMm].map((x) => darkMiddle(card, x, yMm - 1.6, 0.6)) as [
      number,
      number,
    ];
    expect(Math.abs(right - left - lengthMm)).toBeLessThan(mostOffMm);
    expect(words).toBe('150.0 mm, or 5 29/32 in');
    expect(Math.abs((5 + 29 / 32) * 25.4 - lengthMm)).toBeLessThan(0.05);
    expect(Math.abs((9 + 27 / 32) * 25.4 - scaleCard.heightMm)).toBeLessThan(0.05);
  });

  test('each patch has its color all over', () => {
    for (const { id, xMm, yMm, widthMm, heightMm, srgb } of cardPatches) {
      const wanted = [1, 3, 5].map((at) => Number.parseInt(srgb.slice(at, at + 2), 16));
      for (const [dx, dy] of [
        [0.2, 0.2],
        [widthMm - 0.2, 0.2],
        [widthMm / 2, heightMm / 2],
        [0.2, heightMm - 0.2],
        [widthMm - 0.2, heightMm - 0.2],
      ] as const) {
        const found = colourAt(card, xMm + dx, yMm + dy);
        for (const [i, value] of wanted.entries())
          expect(Math.abs((found[i] as number) - value), id).toBeLessThanOrEqual(2);
      }
      for (const [dx, dy] of [
        [-0.2, 5],
        [widthMm + 0.2, 5],
        [5, -0.2],
        [5, heightMm + 0.2],
      ] as const)
        expect(colourAt(card, xMm + dx, yMm + dy), `beside ${id}`).toEqual([255, 255, 255]);
    }
  });
});

function colourAt(card: PrintedCard, xMm: number, yMm: number): number[] {
  const [x, y] = card.at(xMm, yMm).map(Math.round) as [number, number];
  const at = 3 * (y * card.widthPx + x);
  return [...card.rgb.subarray(at, at + 3)];
}

function toneAt(card: PrintedCard, xMm: number, yMm: number): number {
  return colourAt(card, xMm, yMm)[1] as number;
}

/** How far along a short way, in mm, tone passes half between its ends: by how much of it lies on the side of the start. */
function edgeAlong(
  card: PrintedCard,
  from: readonly [number, number],
  to: readonly [number, number],
): number {
  const count = 400;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const tones = Array.from({ length: count }, (_, i) => {
    const share = (i + 0.5) / count;
    return toneAt(card, from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]));
  });
  const [start, end] = [tones[0] as number, tones[count - 1] as number];
  expect(Math.abs(start - end)).toBeGreaterThan(200);
  return (length * tones.filter((tone) => Math.abs(tone - start) < Math.abs(tone - end)).length) / count;
}

/** The middle of what is dark about a place, along x. */
function darkMiddle(card: PrintedCard, xMm: number, yMm: number, reachMm: number): number {
  let [sum, weighed] = [0, 0];
  for (let dx = -reachMm; dx <= reachMm; dx += 0.01) {
    const dark = 255 - toneAt(card, xMm + dx, yMm);
    sum += dark;
    weighed += dark * (xMm + dx);
  }
  expect(sum).toBeGreaterThan(0);
  return weighed / sum;
}
