import { directEllipse } from '../src/photo/geometry/ellipseDirect.ts';
import { fitEllipse } from '../src/photo/geometry/ellipseFit.ts';
import { type Homography, mapped } from '../src/photo/geometry/homography.ts';
import { rectifyPlane } from '../src/photo/geometry/rectify.ts';
import type { Point } from '../src/photo/picture.ts';
import type { GreyPicture } from '../src/web/bench/vision/greyPicture.ts';
import { drawn } from '../test/kits/surfaces/drawn.ts';

type PeerMat = { data: Uint8Array; data64F: Float64Array; delete(): void };
/** What is used of the vision library as a peer. */
export type PeerCv = {
  Mat: new (rows?: number, cols?: number, type?: number) => PeerMat;
  CV_32FC2: number;
  matFromArray(rows: number, cols: number, type: number, values: readonly number[]): PeerMat;
  findHomography(from: PeerMat, to: PeerMat, method: number): PeerMat;
  fitEllipseDirect(points: PeerMat): {
    center: { x: number; y: number };
    size: { width: number; height: number };
    angle: number;
  };
};

export type PeerRow = { what: string; oursMs: number; theirsMs: number; apart: string };

/** Ours and the library's, on the same input in the same run; medians of the given number of runs after one that is not counted. */
export function comparePeers(
  cv: PeerCv,
  _picture: GreyPicture,
  toPicture: Homography,
  runs: number,
): PeerRow[] {
  return [homographies(cv, toPicture, runs), ...ellipses(cv, runs)];
}

function homographies(cv: PeerCv, toPicture: Homography, runs: number): PeerRow {
  const random = drawn(1);
  const world = Array.from({ length: 32 }, (_, i): Point => [(i % 8) * 20, Math.floor(i / 8) * 60]);
  const image = world.map((place): Point => {
    const [x, y] = mapped(toPicture, place).point;
    return [x + 0.3 * random.normal(), y + 0.3 * random.normal()];
  });
  const ours = { h: toPicture };
  const oursMs = median(runs, () => {
    ours.h = rectifyPlane({ image, world })?.view.toPicture as Homography;
  });
  const [from, to] = [
    cv.matFromArray(32, 1, cv.CV_32FC2, world.flat()),
    cv.matFromArray(32, 1, cv.CV_32FC2, image.flat()),
  ];
  const theirs = { h: toPicture };
  const theirsMs = median(runs, () => {
    const found = cv.findHomography(from, to, 0);
    const values = [...found.data64F];
    theirs.h = [values.slice(0, 3), values.slice(3, 6), values.slice(6, 9)] as unknown as Homography;
    found.delete();
  });
  from.delete();
  to.delete();
  const apart = Math.max(
    ...world.map((place) => away(mapped(ours.h, place).point, mapped(theirs.h, place).point)),
  );
  return {
    what: 'homography of 32 pairs',
    oursMs,
    theirsMs,
    apart: `${apart.toExponential(1)} px at the marks`,
  };
}

function ellipses(cv: PeerCv, runs: number): PeerRow[] {
  const random = drawn(2);
  const points = Array.from({ length: 200 }, (_, i): Point => {
    const [u, v] = [300 * Math.cos(i * 0.02), 180 * Math.sin(i * 0.02)];
    return [640 + 0.9 * u - 0.436 * v + random.normal(), 410 + 0.436 * u + 0.9 * v + random.normal()];
  });
  const ours = { semiMajor: 0, semiMinor: 0 };
  const oursMs = median(runs, () => Object.assign(ours, directEllipse(points)));
  const mat = cv.matFromArray(points.length, 1, cv.CV_32FC2, points.flat());
  const theirs = { long: 0, short: 0 };
  const theirsMs = median(runs, () => {
    const { width, height } = cv.fitEllipseDirect(mat).size;
    Object.assign(theirs, { long: Math.max(width, height) / 2, short: Math.min(width, height) / 2 });
  });
  mat.delete();
  const geometricMs = median(Math.ceil(runs / 5), () => void fitEllipse(points));
  const apart = Math.max(Math.abs(ours.semiMajor - theirs.long), Math.abs(ours.semiMinor - theirs.short));
  return [
    {
      what: 'direct ellipse of 200 points on two thirds of the round',
      oursMs,
      theirsMs,
      apart: `${apart.toExponential(1)} px in the half axes`,
    },
    {
      what: 'the same by distances, with its doubt',
      oursMs: geometricMs,
      theirsMs: Number.NaN,
      apart: 'the library has none',
    },
  ];
}

function away([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(ax - bx, ay - by);
}

function median(runs: number, act: () => void): number {
  act();
  const times = Array.from({ length: Math.max(1, runs) }, () => {
    const from = performance.now();
    act();
    return performance.now() - from;
  });
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)] as number;
}
