import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { bevelled } from '../solids/bevelled.ts';
import { type Point, smoothLine } from '../solids/shapes.ts';
import { noise } from '../woods/noise.ts';
import { cherry } from './plan.ts';

const bandMm = 36;

/** Hollows of a jack plane's round iron along y, each begun where the last one ended, ridges left between. */
function tracks(x: number, y: number): number {
  const at = (x + 5 * noise(0, y * 0.008, 0, 3) + 0.03 * y) / bandMm;
  const band = Math.floor(at);
  const across = (at - band) * 2 - 1;
  const deep = 1.9 + 0.5 * noise(band, y * 0.01, 0, 4);
  return -deep * (0.5 + 0.5 * Math.cos(Math.PI * across)) + 0.05 * noise(x * 0.5, y * 0.03, 0, 6);
}

/** Short flats of a spokeshave along the bevel, and the slight tear of its iron. */
function facets(x: number, y: number): number {
  const at = y * 0.07 + noise(x * 0.02, y * 0.02, 0, 2);
  return 0.22 * Math.abs(at - Math.round(at)) ** 1.5 * 4 + 0.03 * noise(x * 0.3, y * 0.9, 0, 7);
}

/** The back of the splat: its edges bevelled away by hand, its face in the hollows of the jack plane. */
export function chamferedSplat(): Scene {
  const right: Point[] = smoothLine(
    [
      [104, -190],
      [96, -130],
      [62, -70],
      [48, -10],
      [60, 50],
      [92, 110],
      [108, 190],
    ],
    12,
  );
  const left = right.map(([x, y]): Point => [-x, y]).toReversed();
  const face = cherry({
    along: 'y',
    board: 51,
    heart: [20, -80],
    gloss: 0.16,
    tone: [0.76, 0.66, 0.6],
    relief: tracks,
    reliefStepMm: 0.5,
  });
  const cut = cherry({
    along: 'y',
    board: 51,
    heart: [20, -80],
    gloss: 0.25,
    tone: [0.92, 0.82, 0.74],
    relief: facets,
  });
  const bevel = (i: number) => 9 + 2.8 * noise(i * 0.21, 0, 0, 9) + 0.9 * noise(i * 0.7, 0, 0, 10);
  return near(
    bevelled([...right, ...left], 11, (i) => [bevel(i), 6.5 + 1.6 * noise(i * 0.3, 4, 0, 11)], { face, cut }),
    [-175, 70, 240],
    [-16, 8, 0],
    {
      fieldDeg: 27,
      lamp: [-0.9, 0.34, 0.24],
      lampStrength: 2.3,
      roomStrength: 0.36,
    },
  );
}
