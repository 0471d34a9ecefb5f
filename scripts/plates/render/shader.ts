import type { Camera } from './camera.ts';
import type { Openness } from './nearness.ts';
import type { Face, Out, Scene } from './scene.ts';
import type { Seen } from './seeFaces.ts';
import type { LampReach } from './shadowMap.ts';
import { unit } from './vector.ts';

/** Gives the light that comes from face `index` through sample (x, y): linear, into `out`. */
export type Shader = (index: number, x: number, y: number, out: Out) => void;

const skyLight = [0.93, 0.98, 1.05] as const;
const groundLight = [1.05, 0.94, 0.82] as const;
const lampLight = [1.06, 1, 0.9] as const;

/** A lamp that casts shadows, light from all round that fails in corners, and a sheen on what is polished. */
export function shaderOf(scene: Scene, seen: Seen, camera: Camera, open: Openness, reach: LampReach): Shader {
  const [lx, ly, lz] = unit(scene.lamp);
  const off = reach.offMm;
  const n = new Float64Array(3);
  const place = new Float64Array(3);
  return (index, x, y, out) => {
    const face = scene.faces[index] as Face;
    const near =
      (seen.planes[index * 3] as number) * x +
      (seen.planes[index * 3 + 1] as number) * y +
      (seen.planes[index * 3 + 2] as number);
    const dx = camera.corner[0] + x * camera.right[0] + y * camera.down[0];
    const dy = camera.corner[1] + x * camera.right[1] + y * camera.down[1];
    const dz = camera.corner[2] + x * camera.right[2] + y * camera.down[2];
    const px = camera.eye[0] + dx / near;
    const py = camera.eye[1] + dy / near;
    const pz = camera.eye[2] + dz / near;
    n[0] = face.normal[0];
    n[1] = face.normal[1];
    n[2] = face.normal[2];
    face.normalAt?.(px, py, pz, n);
    const facing = (n[0] as number) * lx + (n[1] as number) * ly + (n[2] as number) * lz;
    const lit = facing > 0 ? reach.at(px + n[0] * off, py + n[1] * off, pz + n[2] * off) : 0;
    intoOwn(face, px, py, pz, place);
    face.look.colour(place[0] as number, place[1] as number, place[2] as number, out);
    bend(face, place, n);
    const nx = n[0] as number;
    const ny = n[1] as number;
    const nz = n[2] as number;
    const direct = Math.max(0, nx * lx + ny * ly + nz * lz) * lit * scene.lampStrength;
    const away = -1 / Math.sqrt(dx * dx + dy * dy + dz * dz);
    const hx = dx * away + lx;
    const hy = dy * away + ly;
    const hz = dz * away + lz;
    const sharp = Math.max(0, nx * hx + ny * hy + nz * hz) / Math.sqrt(hx * hx + hy * hy + hz * hz);
    const { gloss } = face.look;
    const sheen =
      gloss > 0 && lit > 0 ? gloss * lit * scene.lampStrength * 0.14 * sharp ** (8 + gloss * 50) : 0;
    const free = open.open[opennessAt(open, x, y)] as number;
    const up = 0.5 + 0.5 * ny;
    const fill = 0.72 + 0.28 * Math.max(0, -(nx * dx + ny * dy + nz * dz) * -away);
    for (let k = 0; k < 3; k++) {
      const room =
        ((skyLight[k] as number) * up + (groundLight[k] as number) * 0.55 * (1 - up)) *
        scene.roomStrength *
        free *
        fill;
      out[k] = (out[k] as number) * (direct * (lampLight[k] as number) * (0.45 + 0.55 * free) + room) + sheen;
    }
  };
}

function opennessAt(open: Openness, x: number, y: number): number {
  const row = Math.min(open.high - 1, Math.floor(y / open.step));
  return row * open.across + Math.min(open.across - 1, Math.floor(x / open.step));
}

function intoOwn(face: Face, x: number, y: number, z: number, to: Float64Array): void {
  if (face.own === undefined) {
    to[0] = x;
    to[1] = y;
    to[2] = z;
    return;
  }
  const { turn, origin } = face.own;
  const [a, b, c] = [x - origin[0], y - origin[1], z - origin[2]];
  for (let k = 0; k < 3; k++)
    to[k] = (turn[k * 3] as number) * a + (turn[k * 3 + 1] as number) * b + (turn[k * 3 + 2] as number) * c;
}

/** Turns the direction of a surface by the slope of its relief. */
function bend(face: Face, place: Float64Array, n: Float64Array): void {
  const { relief, reliefStepMm: step = 0.15 } = face.look;
  if (relief === undefined) return;
  const [x, y, z] = place as unknown as [number, number, number];
  const here = relief(x, y, z);
  let gx = (relief(x + step, y, z) - here) / step;
  let gy = (relief(x, y + step, z) - here) / step;
  let gz = (relief(x, y, z + step) - here) / step;
  if (face.own !== undefined) {
    const t = face.own.turn as [number, number, number, number, number, number, number, number, number];
    [gx, gy, gz] = [
      t[0] * gx + t[3] * gy + t[6] * gz,
      t[1] * gx + t[4] * gy + t[7] * gz,
      t[2] * gx + t[5] * gy + t[8] * gz,
    ];
  }
  const along = gx * (n[0] as number) + gy * (n[1] as number) + gz * (n[2] as number);
  const bx = (n[0] as number) - gx + along * (n[0] as number);
  const by = (n[1] as number) - gy + along * (n[1] as number);
  const bz = (n[2] as number) - gz + along * (n[2] as number);
  const long = Math.sqrt(bx * bx + by * by + bz * bz);
  n[0] = bx / long;
  n[1] = by / long;
  n[2] = bz / long;
}
