import { pairFault } from '../../../photo/geometry/pairFaults.ts';
import { distancesOf, rectifyPlane } from '../../../photo/geometry/rectify.ts';
import { scaleCard } from '../../../photo/geometry/scaleCard.ts';
import { findBoards, type SeenCard, type SeenCorners } from './findBoards.ts';
import { cutTile, type GreyPicture } from './greyPicture.ts';
import type { OpenCv } from './openCv.ts';

/** The card as found: pairs ready for `photo.rectify`, or one sentence that says what to do. */
export type CardFound =
  | {
      found: true;
      image: [number, number][];
      world: [number, number][];
      boards: number;
      residualPx: number;
      says: string[];
    }
  | { found: false; message: string };

/** The whole picture is looked over small, then less small; the card itself then at its full size, or the most the library bears. */
const overviewPx = [1600, 4000] as const;
const mostTilePx = 4000;
/** A corner further off than this, and than five times the middle one, is left out. */
const strayPx = 3;

/**
 * Where is the scale card in this picture?
 *
 * Method: marks of the open standard ChArUco, found by OpenCV in a small copy; then the corners of both boards in the part of the
 * picture that holds the card, to a fraction of a pixel.
 *
 * @param cv      the vision library
 * @param onStep  told the share done, 0–1
 */
export function findCard(
  cv: OpenCv,
  picture: GreyPicture,
  onStep: (share: number) => void = () => {},
): CardFound {
  const whole = { leftPx: 0, topPx: 0, widthPx: picture.widthPx, heightPx: picture.heightPx };
  let seen: SeenCard | undefined;
  for (const [i, mostPx] of overviewPx.entries()) {
    if (i > 0 && Math.max(picture.widthPx, picture.heightPx) <= (overviewPx[i - 1] as number)) break;
    const tile = cutTile(picture, whole, mostPx);
    seen = findBoards(cv, tile);
    onStep((i + 1) / (overviewPx.length + 1));
    if (seen.boards === scaleCard.boards.length || (i > 0 && seen.marks.size > 0)) {
      if (tile.shrunk > 1) seen = closer(cv, picture, seen) ?? seen;
      break;
    }
  }
  onStep(1);
  if (seen === undefined || seen.marks.size === 0)
    return {
      found: false,
      message: `There is no scale card in this picture, or it is too small, too blurred or in glare: lay “${scaleCard.name}” in the plane, near the camera, and take the picture again; or mark four points of known place by hand.`,
    };
  return judged(seen);
}

/** The part of the picture that holds the marks, at its full size where that is not too large. */
function closer(cv: OpenCv, picture: GreyPicture, seen: SeenCard): SeenCard | undefined {
  const points = [...seen.marks.values()].flat();
  if (points.length === 0) return undefined;
  const [left, right] = [Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))];
  const [top, bottom] = [Math.min(...points.map(([, y]) => y)), Math.max(...points.map(([, y]) => y))];
  // The other board may not have been seen yet: as far again to every side.
  const about =
    seen.boards < scaleCard.boards.length
      ? Math.max(right - left, bottom - top)
      : 0.1 * Math.max(right - left, bottom - top);
  const leftPx = Math.max(0, Math.floor(left - about));
  const topPx = Math.max(0, Math.floor(top - about));
  const tile = cutTile(
    picture,
    {
      leftPx,
      topPx,
      widthPx: Math.min(picture.widthPx, Math.ceil(right + about)) - leftPx,
      heightPx: Math.min(picture.heightPx, Math.ceil(bottom + about)) - topPx,
    },
    mostTilePx,
  );
  const near = findBoards(cv, tile);
  return near.corners.image.length >= seen.corners.image.length ? near : undefined;
}

function judged({ corners, boards }: SeenCard): CardFound {
  const few: CardFound = {
    found: false,
    message:
      'The scale card is in the picture, but too few of its corners can be made out: keep it whole, flat and free of glare, and take it from nearer or less aslant.',
  };
  if (pairFault(corners) !== undefined) return few;
  const kept = withoutStrays(corners);
  if (kept === undefined || pairFault(kept.corners) !== undefined) return few;
  const says = [
    ...(boards < scaleCard.boards.length
      ? ['Only one of the card’s two boards can be made out: lengths far from it are less sure.']
      : []),
    ...(kept.strays > 0
      ? [`${kept.strays} of its corners did not fit and were left out: is the card flat?`]
      : []),
  ];
  return {
    found: true,
    image: kept.corners.image,
    world: kept.corners.world,
    boards,
    residualPx: kept.residualPx,
    says,
  };
}

function withoutStrays(
  corners: SeenCorners,
): { corners: SeenCorners; strays: number; residualPx: number } | undefined {
  const first = rectifyPlane(corners);
  if (first === undefined) return undefined;
  const off = distancesOf(first.view, corners);
  const middle = [...off].sort((a, b) => a - b)[Math.floor(off.length / 2)] as number;
  const fits = off.map((each) => each <= Math.max(strayPx, 5 * middle));
  const strays = fits.filter((fit) => !fit).length;
  if (strays === 0) return { corners, strays, residualPx: first.residualPx };
  const kept = {
    image: corners.image.filter((_, i) => fits[i]),
    world: corners.world.filter((_, i) => fits[i]),
  };
  const again = kept.image.length < 4 ? undefined : rectifyPlane(kept);
  return again && { corners: kept, strays, residualPx: again.residualPx };
}
