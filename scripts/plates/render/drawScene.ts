import { cameraOf } from './camera.ts';
import { openness } from './nearness.ts';
import type { Scene } from './scene.ts';
import { seeFaces } from './seeFaces.ts';
import { type Shader, shaderOf } from './shader.ts';
import { shadowMap } from './shadowMap.ts';

/** Draws a scene. @returns three bytes a pixel, row by row from the upper left */
export function drawScene(scene: Scene, across: number, high: number): Uint8Array {
  const camera = cameraOf(scene, across * 2, high * 2);
  const seen = seeFaces(scene.faces, camera, across * 2, high * 2);
  const open = openness(scene, seen, camera, 6);
  const shade = shaderOf(scene, seen, camera, open, shadowMap(scene.faces, scene.lamp));
  const bytes = new Uint8Array(across * high * 3);
  const print = printer();
  const light = new Float64Array(3);
  const one = new Float64Array(3);
  for (let y = 0; y < high; y++)
    for (let x = 0; x < across; x++) {
      pixel(seen.face, across * 2, x * 2, y * 2, shade, light, one);
      const corner = 1 - 0.2 * ((x / across - 0.5) ** 2 + (y / high - 0.5) ** 2) * 2;
      for (let k = 0; k < 3; k++) bytes[(y * across + x) * 3 + k] = print((light[k] as number) * corner);
    }
  return bytes;
}

/** Four samples make a pixel; a face that fills them all is looked at once. */
function pixel(
  faces: Int32Array,
  across: number,
  x: number,
  y: number,
  shade: Shader,
  to: Float64Array,
  one: Float64Array,
) {
  const a = faces[y * across + x] as number;
  const b = faces[y * across + x + 1] as number;
  const c = faces[(y + 1) * across + x] as number;
  const d = faces[(y + 1) * across + x + 1] as number;
  to.fill(0);
  if (a === b && a === c && a === d) {
    if (a >= 0) shade(a, x + 1, y + 1, to);
    return;
  }
  for (const [index, dx, dy] of [
    [a, 0.5, 0.5],
    [b, 1.5, 0.5],
    [c, 0.5, 1.5],
    [d, 1.5, 1.5],
  ] as const) {
    if (index < 0) continue;
    shade(index, x + dx, y + dy, one);
    for (let k = 0; k < 3; k++) to[k] = (to[k] as number) + (one[k] as number) / 4;
  }
}

/** Light as a printed value: bright places roll off softly instead of being cut. */
function printer(): (light: number) => number {
  const most = 2;
  const steps = 16384;
  const values = Uint8Array.from({ length: steps + 1 }, (_, i) => {
    const light = (i / steps) * most;
    const soft = light < 0.6 ? light : 0.6 + 0.4 * (1 - Math.exp(-(light - 0.6) / 0.4));
    return Math.round(255 * soft ** (1 / 2.2));
  });
  return (light) => values[Math.max(0, Math.min(steps, Math.round((light / most) * steps)))] as number;
}
