import type { Face } from '../render/scene.ts';
import { add, minus, type Vec } from '../render/vector.ts';

/** Turns solids about an axis through a place; their grain turns with them. Degrees, anticlockwise along the axis. */
export function turn(
  faces: readonly Face[],
  axis: 'x' | 'y' | 'z',
  degrees: number,
  about: Vec = [0, 0, 0],
): Face[] {
  const c = Math.cos((degrees * Math.PI) / 180);
  const s = Math.sin((degrees * Math.PI) / 180);
  const rows =
    axis === 'x'
      ? [1, 0, 0, 0, c, -s, 0, s, c]
      : axis === 'y'
        ? [c, 0, s, 0, 1, 0, -s, 0, c]
        : [c, -s, 0, s, c, 0, 0, 0, 1];
  const m = rows as unknown as Nine;
  return faces.map((face) => moved(face, m, about, about));
}

/** Moves solids; their grain moves with them. */
export function shift(faces: readonly Face[], by: Vec): Face[] {
  return faces.map((face) => moved(face, [1, 0, 0, 0, 1, 0, 0, 0, 1], [0, 0, 0], by));
}

type Nine = readonly [number, number, number, number, number, number, number, number, number];

const applied = (m: Nine, [x, y, z]: Vec): Vec => [
  m[0] * x + m[1] * y + m[2] * z,
  m[3] * x + m[4] * y + m[5] * z,
  m[6] * x + m[7] * y + m[8] * z,
];
const back = (m: Nine): Nine => [m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]];

/** place → m · (place − from) + to */
function moved(face: Face, m: Nine, from: Vec, to: Vec): Face {
  const place = (p: Vec) => add(applied(m, minus(p, from)), to);
  const undo = back(m);
  const was = face.own ?? { turn: [1, 0, 0, 0, 1, 0, 0, 0, 1], origin: [0, 0, 0] as Vec };
  const whole = times9(was.turn as unknown as Nine, undo);
  const { normalAt } = face;
  return {
    ...face,
    loops: face.loops.map((loop) => loop.map(place)),
    normal: applied(m, face.normal),
    own: { turn: whole, origin: place(was.origin) },
    ...(normalAt && {
      normalAt: (x, y, z, out) => {
        const p = add(applied(undo, minus([x, y, z], to)), from);
        normalAt(p[0], p[1], p[2], out);
        const n = applied(m, [out[0] as number, out[1] as number, out[2] as number]);
        out.set(n);
      },
    }),
  };
}

function times9(a: Nine, b: Nine): Nine {
  const rows = [0, 3, 6].flatMap((r) =>
    [0, 1, 2].map(
      (c) =>
        (a[r] as number) * (b[c] as number) +
        (a[r + 1] as number) * (b[c + 3] as number) +
        (a[r + 2] as number) * (b[c + 6] as number),
    ),
  );
  return rows as unknown as Nine;
}
