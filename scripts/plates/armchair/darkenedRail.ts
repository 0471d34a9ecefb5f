import { near } from '../chairs/studio.ts';
import type { Out, Scene } from '../render/scene.ts';
import type { Vec } from '../render/vector.ts';
import { box, extrude, fromAbove } from '../solids/extrude.ts';
import { arc } from '../solids/shapes.ts';
import { noise } from '../woods/noise.ts';
import { wood } from '../woods/wood.ts';
import { cherry } from './plan.ts';

/** Bare wood gone brown in the air, greyer toward the floor. */
function aged([x, y, z]: Vec, out: Out): void {
  const low = Math.max(0, Math.min(1, -y / 68));
  const cloud = 0.9 + 0.14 * noise(x * 0.03, y * 0.03, z * 0.03, 21);
  const tone = [0.46 - 0.04 * low, 0.42 + 0.05 * low, 0.4 + 0.2 * low];
  for (let k = 0; k < 3; k++) out[k] = (out[k] as number) * (tone[k] as number) * cloud;
}

/** Pale where the seat frame lay, a line of dirt at its edge, brown beyond. */
function underCover([x, y, z]: Vec, out: Out): void {
  const edge = 9.5 + 0.7 * noise(x * 0.05, 0, z * 0.05, 22);
  const into = -z;
  const pale = into > edge ? 1.45 : 0.62;
  const dirt = 1 - 0.72 * Math.exp(-(((into - edge) / 0.9) ** 2));
  const spots = 1 - 0.12 * Math.max(0, noise(x * 0.5, y, z * 0.5, 23));
  for (let k = 0; k < 3; k++) out[k] = (out[k] as number) * pale * dirt * spots * (k === 2 ? 1.05 : 1);
}

/** Laid out for the right and printed mirrored: the left front corner of the seat from inside and above, the seat lifted out. */
export function darkenedRail(): Scene {
  const top = cherry({
    along: 'x',
    board: 31,
    heart: [-90, 70],
    tone: [1, 1, 1],
    gloss: 0.2,
    over: (place, out) => (place[1] > -0.1 ? underCover(place, out) : aged(place, out)),
  });
  const inside = cherry({
    along: 'z',
    board: 32,
    heart: [60, -80],
    tone: [1, 1, 1],
    gloss: 0.12,
    over: aged,
  });
  return near(
    [
      ...box([-46, -300, -46], [0, -0.5, 0], cherry({ along: 'y', board: 12, tone: [0.7, 0.6, 0.55] })),
      ...box([0, -68, -27], [420, 0, -2], top),
      ...box([-26, -68, -460], [-1, 0, -46], inside),
      ...extrude(
        [[0, 27], ...arc([0, 27], 24, 0, 90, 16)],
        fromAbove(-64),
        58,
        wood('pine', { along: 'y', board: 5, tone: [0.62, 0.55, 0.5], gloss: 0.05 }),
      ),
    ],
    [178, 150, -190],
    [22, -26, -36],
    { fieldDeg: 27, lamp: [0.75, 0.62, -0.12], behindMm: 330 },
  );
}
