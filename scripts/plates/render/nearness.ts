import type { Camera } from './camera.ts';
import type { Scene } from './scene.ts';
import type { Seen } from './seeFaces.ts';

/** How open each place of the picture lies to the room, on a coarser grid: 0 shut in to 1 free. */
export type Openness = { across: number; high: number; step: number; open: Float32Array };

const ring = Array.from({ length: 10 }, (_, i) => {
  const turn = i * 2.399963;
  const far = Math.sqrt((i + 0.6) / 10);
  return [Math.cos(turn) * far, Math.sin(turn) * far] as const;
});

/** Darkens what lies close under or beside something else. */
export function openness(scene: Scene, seen: Seen, camera: Camera, step: number): Openness {
  const across = Math.floor(seen.across / step);
  const high = Math.floor(seen.high / step);
  const places = placesOf(seen, camera, across, high, step);
  const open = new Float32Array(across * high).fill(1);
  const perMm = 1 / Math.hypot(...camera.right) / step;
  for (let y = 0; y < high; y++)
    for (let x = 0; x < across; x++) {
      const at = y * across + x;
      const index = seen.face[y * step * seen.across + x * step] as number;
      const face = scene.faces[index];
      if (face === undefined) continue;
      const reach = scene.nearnessMm * perMm * (seen.nearness[y * step * seen.across + x * step] as number);
      let shut = 0;
      for (const [dx, dy] of ring) {
        const sx = Math.round(x + dx * reach);
        const sy = Math.round(y + dy * reach);
        if (sx < 0 || sy < 0 || sx >= across || sy >= high) continue;
        const there = (sy * across + sx) * 3;
        const vx = (places[there] as number) - (places[at * 3] as number);
        const vy = (places[there + 1] as number) - (places[at * 3 + 1] as number);
        const vz = (places[there + 2] as number) - (places[at * 3 + 2] as number);
        const far = Math.sqrt(vx * vx + vy * vy + vz * vz);
        if (far < 1e-6) continue;
        const rise = (vx * face.normal[0] + vy * face.normal[1] + vz * face.normal[2]) / far;
        if (rise > 0.12) shut += (rise - 0.12) * Math.max(0, 1 - far / (2 * scene.nearnessMm));
      }
      open[at] = Math.max(0, 1 - (1.75 * shut) / ring.length);
    }
  return { across, high, step, open: softened(open, across, high) };
}

function placesOf(seen: Seen, camera: Camera, across: number, high: number, step: number): Float32Array {
  const places = new Float32Array(across * high * 3).fill(1e7);
  for (let y = 0; y < high; y++)
    for (let x = 0; x < across; x++) {
      const near = seen.nearness[y * step * seen.across + x * step] as number;
      if (near <= 0) continue;
      for (let k = 0; k < 3; k++) {
        const ray =
          (camera.corner[k] as number) +
          (x * step + 0.5) * (camera.right[k] as number) +
          (y * step + 0.5) * (camera.down[k] as number);
        places[(y * across + x) * 3 + k] = (camera.eye[k] as number) + ray / near;
      }
    }
  return places;
}

function softened(from: Float32Array, across: number, high: number): Float32Array {
  const to = from.slice();
  for (let y = 2; y < high - 2; y++)
    for (let x = 2; x < across - 2; x++) {
      let sum = 0;
      for (let j = -2; j <= 2; j++)
        for (let i = -2; i <= 2; i++) sum += from[(y + j) * across + x + i] as number;
      to[y * across + x] = sum / 25;
    }
  return to;
}
