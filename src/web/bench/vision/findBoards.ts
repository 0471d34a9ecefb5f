import { type CardBoard, cornersOf, marksOf, scaleCard } from '../../../photo/geometry/scaleCard.ts';
import { fromTile, type Tile } from './greyPicture.ts';
import type { Deletable, Mat, MatVector, OpenCv } from './openCv.ts';

/** Corners of the card seen in a picture, and the places on the card that they are, in mm. */
export type SeenCorners = { image: [number, number][]; world: [number, number][] };

/** What is seen of the card in a tile: its marks, by number, each with its four corners; and where its squares meet. */
export type SeenCard = { marks: Map<number, [number, number][]>; corners: SeenCorners; boards: number };

/** Marks smaller than this part of the long side of a tile are not looked for: about 20 pixels to a side of 4,000. */
const leastMarkShare = 0.02;

/** The library counts the corners of boards from the edge of the first pixel; we count from its middle. Found by drawing a known view. */
const fromEdge = 0.5;

/**
 * Looks for the boards of the scale card in a tile.
 *
 * Everything that the library keeps is given back, whatever happens.
 *
 * @param cv  the vision library
 * @returns marks and corners in pixels of the whole picture; none where nothing of the card is seen
 */
export function findBoards(cv: OpenCv, tile: Tile): SeenCard {
  const held: Deletable[] = [];
  const hold = <T extends Deletable>(one: T): T => {
    held.push(one);
    return one;
  };
  try {
    const image = hold(new cv.Mat(tile.heightPx, tile.widthPx, cv.CV_8UC1));
    image.data.set(tile.pixels);
    const dictionary = hold(cv.getPredefinedDictionary(cv.DICT_4X4_50));
    const parameters = hold(new cv.aruco_DetectorParameters());
    parameters.minMarkerPerimeterRate = leastMarkShare;
    // The window follows the size of the picture: three of them, the widest for marks near the camera.
    parameters.adaptiveThreshWinSizeMax = 53;
    parameters.adaptiveThreshWinSizeStep = 25;
    const refine = hold(new cv.aruco_RefineParameters(10, 3, true));
    const found = hold(new cv.MatVector());
    const numbers = hold(new cv.Mat());
    hold(new cv.aruco_ArucoDetector(dictionary, parameters, refine)).detectMarkers(image, found, numbers);
    const marks = marksSeen(tile, found, numbers);
    const seen: SeenCorners = { image: [], world: [] };
    let boards = 0;
    for (const board of scaleCard.boards) {
      const own = marksOf(board).filter(({ number }) => marks.has(number));
      if (own.length < 2) continue;
      const { image: corners, world } = cornersSeen(cv, tile, image, board, {
        dictionary,
        parameters,
        refine,
        found,
        numbers,
      });
      if (corners.length > 0) boards++;
      seen.image.push(...corners);
      seen.world.push(...world);
    }
    return { marks, corners: seen, boards };
  } finally {
    for (const one of held.reverse()) one.delete();
  }
}

function marksSeen(tile: Tile, found: MatVector, numbers: Mat): Map<number, [number, number][]> {
  const known = new Set(scaleCard.boards.flatMap((board) => marksOf(board).map(({ number }) => number)));
  const marks = new Map<number, [number, number][]>();
  for (let i = 0; i < numbers.rows; i++) {
    const number = numbers.data32S[i] as number;
    const quad = found.get(i);
    try {
      const at = [...quad.data32F];
      if (known.has(number))
        marks.set(
          number,
          [0, 1, 2, 3].map((k) => fromTile(tile, [at[2 * k] as number, at[2 * k + 1] as number])),
        );
    } finally {
      quad.delete();
    }
  }
  return marks;
}

type Ready = {
  dictionary: Deletable;
  parameters: Deletable;
  refine: Deletable;
  found: MatVector;
  numbers: Mat;
};

function cornersSeen(cv: OpenCv, tile: Tile, image: Mat, board: CardBoard, ready: Ready): SeenCorners {
  const held: Deletable[] = [];
  const hold = <T extends Deletable>(one: T): T => {
    held.push(one);
    return one;
  };
  try {
    const own = marksOf(board).map(({ number }) => number);
    const ids = hold(cv.matFromArray(own.length, 1, cv.CV_32S, own));
    const chess = hold(
      new cv.aruco_CharucoBoard(
        new cv.Size(board.columns, board.rows),
        board.squareMm,
        board.markMm,
        ready.dictionary,
        ids,
      ),
    );
    const charuco = hold(new cv.aruco_CharucoParameters());
    const detector = hold(new cv.aruco_CharucoDetector(chess, charuco, ready.parameters, ready.refine));
    const corners = hold(new cv.Mat());
    const which = hold(new cv.Mat());
    detector.detectBoard(image, corners, which, ready.found, ready.numbers);
    const places = cornersOf(board);
    const seen: SeenCorners = { image: [], world: [] };
    for (let i = 0; i < which.rows; i++) {
      const place = places[which.data32S[i] as number];
      if (place === undefined) continue;
      seen.image.push(
        fromTile(tile, [
          (corners.data32F[2 * i] as number) - fromEdge,
          (corners.data32F[2 * i + 1] as number) - fromEdge,
        ]),
      );
      seen.world.push([place[0], place[1]]);
    }
    return seen;
  } finally {
    for (const one of held.reverse()) one.delete();
  }
}
