import type { Point } from '../picture.ts';
import type { LensFrame } from './lens.ts';
import type { Pairs } from './planeView.ts';
import { type FittedView, rectifyPlane } from './rectify.ts';

/** What the marks tell of the lens: a radial term with its doubt, or why it stays unknown. */
export type LensEstimate =
  | { known: true; k1: number; sigmaK1: number; frame: LensFrame; fitted: FittedView }
  | { known: false; why: string };

/** Fewer marks than this fix a view, but not a lens besides. */
const leastMarks = 12;

/**
 * The radial term must be known to this, in parts of the radius at the corner of the picture: what a phone leaves after it has
 * straightened its own pictures is about that much (a judgement).
 */
const mostSigmaK1 = 0.003;

/** Share of a length that is allowed for a lens that is not known: a judgement, for ordinary camera and phone lenses. */
export const unknownLensShare = 0.005;

/** The frame of a lens in the middle of a picture, radii counted in half its diagonal. */
export function lensFrameOf(widthPx: number, heightPx: number): LensFrame {
  const unit = Math.hypot(widthPx, heightPx) / 2;
  const centre: Point = [(widthPx - 1) / 2, (heightPx - 1) / 2];
  return { centre, unitPx: [unit, unit] };
}

/**
 * How much does the lens bend straight lines, as far as the marks can tell?
 *
 * Method: one radial term about the middle of the picture, fitted together with the view. It is taken only where there are many
 * marks and they fix it well; else it stays unknown, which is said. A cropped picture has its middle elsewhere: then the answer
 * is wrong, and the marks can't show it.
 */
export function estimateLens(pairs: Pairs, widthPx: number, heightPx: number): LensEstimate {
  const frame = lensFrameOf(widthPx, heightPx);
  if (pairs.image.length < leastMarks)
    return {
      known: false,
      why: `${pairs.image.length} marks are too few to tell how the lens bends lines; it takes ${leastMarks}.`,
    };
  const fitted = rectifyPlane(pairs, frame);
  if (fitted?.view.lens === undefined || fitted.sigmaK1PerPx === undefined)
    return { known: false, why: 'The marks do not tell how the lens bends lines.' };
  const perNumber = fitted.residualPx * Math.sqrt(pairs.image.length / fitted.freedom);
  const sigmaK1 = fitted.sigmaK1PerPx * perNumber;
  if (!(sigmaK1 <= mostSigmaK1))
    return {
      known: false,
      why: 'The marks fill too little of the picture to tell how the lens bends lines: let the card fill more of it.',
    };
  return { known: true, k1: fitted.view.lens.k1, sigmaK1, frame, fitted };
}
