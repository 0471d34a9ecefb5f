import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import { type CardView, photographedCard } from '../../../../test/kits/photographedCard.ts';
import { type PrintedCard, printedCard } from '../../../../test/kits/printedCard.ts';
import { type Homography, mapped } from '../../../photo/geometry/homography.ts';
import { distorted } from '../../../photo/geometry/lens.ts';
import { estimateLens, lensFrameOf } from '../../../photo/geometry/lensEstimate.ts';
import { scaleCard } from '../../../photo/geometry/scaleCard.ts';
import { whiteCells } from '../../../photo/geometry/scaleCardMarks.ts';
import type { Point } from '../../../photo/picture.ts';
import { type CardFound, findCard } from './findCard.ts';
import { type OpenCv, readyOpenCv } from './openCv.ts';

// The printed card, photographed ray by ray with a known view: the finder must give the view's own corners.

let cv: OpenCv;
let card: PrintedCard;
beforeAll(async () => {
  cv = (await readyOpenCv(createRequire(import.meta.url)('@techstark/opencv-js'))).cv;
  card = await printedCard('a4', 300);
}, 60_000);

/** The card turned in its plane, tilted, and put in the picture. */
function viewOf(pxPerMm: number, turnDeg: number, tilt: [number, number], middle: Point): Homography {
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const [cx, cy] = [scaleCard.widthMm / 2, scaleCard.heightMm / 2];
  const linear = [
    [pxPerMm * cos, -pxPerMm * sin],
    [pxPerMm * sin, pxPerMm * cos],
  ] as const;
  const last = 1 - tilt[0] * cx - tilt[1] * cy;
  return [
    [
      linear[0][0] + middle[0] * tilt[0],
      linear[0][1] + middle[0] * tilt[1],
      middle[0] * last - linear[0][0] * cx - linear[0][1] * cy,
    ],
    [
      linear[1][0] + middle[1] * tilt[0],
      linear[1][1] + middle[1] * tilt[1],
      middle[1] * last - linear[1][0] * cx - linear[1][1] * cy,
    ],
    [tilt[0], tilt[1], last],
  ];
}

/** Mean distance between the corners found and where they truly are. */
function meanOff(found: CardFound, { toPicture, k1 = 0, widthPx, heightPx }: CardView): number {
  if (!found.found) throw new Error(found.message);
  const off = found.image.map(([x, y], i) => {
    const straight = mapped(toPicture, found.world[i] as Point).point;
    const [u, v] = distorted({ k1 }, lensFrameOf(widthPx, heightPx), straight);
    return Math.hypot(x - u, y - v);
  });
  return off.reduce((sum, each) => sum + each / off.length, 0);
}

const size = { widthPx: 1200, heightPx: 900 };
const views: [string, CardView, number][] = [
  ['square on', { ...size, toPicture: viewOf(3, 0, [0, 0], [600, 450]), seed: 1 }, 32],
  ['turned by 37 degrees', { ...size, toPicture: viewOf(2.6, 37, [0, 0], [600, 450]), seed: 2 }, 32],
  [
    'upside down and aslant',
    { ...size, toPicture: viewOf(2.7, 180, [0.0012, 0.0018], [600, 480]), seed: 3 },
    24,
  ],
  ['very much aslant', { ...size, toPicture: viewOf(2.4, 80, [-0.003, 0.001], [600, 450]), seed: 4 }, 28],
  ['small in the picture', { ...size, toPicture: viewOf(1.4, 10, [0.0005, 0], [500, 500]), seed: 5 }, 28],
  [
    'in coarse grain',
    { ...size, toPicture: viewOf(2.8, 95, [0.0005, 0.0005], [600, 450]), noise: 15, seed: 6 },
    24,
  ],
];

const bent: CardView = {
  ...size,
  toPicture: viewOf(3.8, 90, [0.0004, 0.0004], [600, 450]),
  k1: -0.05,
  seed: 7,
};

describe('the card is found', () => {
  test.each(views)('%s', (_, view, least) => {
    const found = findCard(cv, photographedCard(card, view));
    expect(found).toMatchObject({ found: true, boards: 2 });
    if (!found.found) return;
    expect(found.image.length).toBeGreaterThanOrEqual(least);
    expect(meanOff(found, view)).toBeLessThan(0.25);
  });

  test('through a lens that bends, and its corners tell how much', () => {
    const found = findCard(cv, photographedCard(card, bent));
    expect(meanOff(found, bent)).toBeLessThan(0.25);
    if (!found.found) throw new Error(found.message);
    const lens = estimateLens(found, bent.widthPx, bent.heightPx);
    if (!lens.known) throw new Error(lens.why);
    expect(Math.abs(lens.k1 - -0.05)).toBeLessThan(4 * lens.sigmaK1);
    expect(lens.sigmaK1).toBeLessThan(0.003);
  });

  test('in a large picture, looked over small and then near', () => {
    const view = {
      widthPx: 2600,
      heightPx: 1800,
      toPicture: viewOf(3, 20, [0.0006, 0.0004], [1900, 700]),
      rays: 1,
      seed: 8,
    };
    const found = findCard(cv, photographedCard(card, view));
    expect(meanOff(found, view)).toBeLessThan(0.25);
  });

  test('with one board out of the picture, which is said', () => {
    const view = { ...size, toPicture: viewOf(5, 0, [0, 0], [600, -80]), seed: 9 };
    const found = findCard(cv, photographedCard(card, view));
    expect(found).toMatchObject({
      found: true,
      boards: 1,
      says: [expect.stringMatching(/^Only one of the card’s two boards/)],
    });
  });
});

test('a picture without the card, and one in which too little of it shows', () => {
  const away = viewOf(3, 0, [0, 0], [9000, 9000]);
  expect(findCard(cv, photographedCard(card, { ...size, toPicture: away, seed: 10 }))).toMatchObject({
    found: false,
    message: expect.stringMatching(
      /^There is no scale card in this picture.*mark four points of known place by hand\.$/,
    ),
  });
  const corner = viewOf(9, 0, [0, 0], [1200 + 90 * 9 - 380, 900 + 125 * 9 - 330]);
  expect(findCard(cv, photographedCard(card, { ...size, toPicture: corner, seed: 11 }))).toMatchObject({
    found: false,
    message: expect.stringMatching(/\.$/),
  });
});

test('the library’s memory is given back', () => {
  const picture = photographedCard(card, views[0]?.[1] as CardView);
  const heap = () => (cv as unknown as { HEAP8: Int8Array }).HEAP8.length;
  findCard(cv, picture);
  const after = heap();
  for (let i = 0; i < 12; i++) findCard(cv, picture);
  expect(heap()).toBe(after);
});

test('the marks are those of the open dictionary', () => {
  type Marks = {
    generateImageMarker(number: number, side: number, into: unknown, border: number): void;
    delete(): void;
  };
  const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50) as unknown as Marks;
  const mat = new cv.Mat();
  for (let number = 0; number < 26; number++) {
    dictionary.generateImageMarker(number, 6, mat, 1);
    const white = [...mat.data].flatMap((tone, i) => (tone > 127 ? [[i % 6, Math.floor(i / 6)]] : []));
    expect(whiteCells(number)).toEqual(white);
  }
  mat.delete();
  dictionary.delete();
});
