import type { Face, Look, Scene } from '../render/scene.ts';
import { add, cross, minus, times, unit, type Vec } from '../render/vector.ts';
import { extrude, fromRight } from '../solids/extrude.ts';
import { arc, type Point } from '../solids/shapes.ts';
import { plain } from '../woods/wood.ts';

const paper = plain([0.3, 0.29, 0.27], 0, 0.03);

/** A sheet of grey paper that runs along the floor and up behind, as in a photographer's room. */
export function sweep(backMm: number, scaleMm: number, look: Look = paper): Face[] {
  const bend: Point[] = arc([backMm - scaleMm * 0.5, scaleMm * 0.5], scaleMm * 0.5, -90, 0, 16);
  const outline: Point[] = [
    [-scaleMm * 3, 0],
    ...bend,
    [backMm, scaleMm * 4],
    [backMm + 10, scaleMm * 4],
    [backMm + 10, -10],
    [-scaleMm * 3, -10],
  ];
  return extrude(outline, fromRight(-scaleMm * 4), scaleMm * 8, look).map((face) => ({
    ...face,
    castsNone: true,
  }));
}

/** A wall of shade behind a part seen near to, darker toward its edges. */
export function backdrop(eye: Vec, target: Vec, behindMm: number, shade: Vec = [0.1, 0.1, 0.105]): Face[] {
  const away = unit(minus(target, eye));
  const middle = add(target, times(away, behindMm));
  const side = unit(cross(away, [0, 1, 0]));
  const up = cross(side, away);
  const reach = behindMm * 6;
  const corner = (a: number, b: number) => add(middle, add(times(side, a * reach), times(up, b * reach)));
  const glow = add(middle, times(up, behindMm * 0.2));
  const look: Look = {
    gloss: 0,
    colour(x, y, z, out) {
      const far = Math.hypot(x - glow[0], y - glow[1], z - glow[2]) / behindMm;
      const by = 0.5 + 0.9 * Math.exp(-far * far * 1.2);
      for (let k = 0; k < 3; k++) out[k] = (shade[k] as number) * by;
    },
  };
  const loop = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  return [{ loops: [loop], normal: times(away, -1), look, castsNone: true }];
}

/** A scene with the usual lamp: low from the upper left, soft light from all round. */
export function lit(faces: Face[], eye: Vec, target: Vec, change: Partial<Scene> = {}): Scene {
  return {
    faces,
    eye,
    target,
    fieldDeg: 24,
    lamp: [-0.7, 0.75, 0.6],
    lampStrength: 1.6,
    roomStrength: 0.5,
    nearnessMm: 18,
    ...change,
  };
}

/** A part seen near to, before a wall of shade. */
export function near(
  faces: Face[],
  eye: Vec,
  target: Vec,
  change: Partial<Scene> & { behindMm?: number; shade?: Vec } = {},
): Scene {
  const { behindMm = 260, shade, ...rest } = change;
  return lit([...backdrop(eye, target, behindMm, shade), ...faces], eye, target, { nearnessMm: 9, ...rest });
}
