import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { extrude, fromFront } from '../solids/extrude.ts';
import { type Point, smoothLine, smoothLoop } from '../solids/shapes.ts';
import { noise } from '../woods/noise.ts';
import { mahogany } from './plan.ts';

const left: Point[] = smoothLine(
  [
    [-62, 150],
    [-58, 90],
    [-40, 30],
    [-37, -20],
    [-52, -80],
    [-70, -150],
  ],
  14,
);
const right: Point[] = left.map(([x, y]): Point => [-x, y]).toReversed();
const upper = smoothLoop(
  [
    [0, 12],
    [20, 50],
    [36, 110],
    [30, 190],
    [0, 215],
    [-30, 190],
    [-36, 110],
    [-20, 50],
  ],
  12,
);
const lower = smoothLoop(
  [
    [0, -34],
    [16, -70],
    [32, -130],
    [30, -200],
    [0, -220],
    [-30, -200],
    [-32, -130],
    [-16, -70],
  ],
  12,
);

/** Fine square lines of a band saw across the edge, about sixteen to the inch, and here and there a deeper one. */
function sawLines(x: number, y: number): number {
  const at = (y * 0.93 + x * 0.35) / 1.6;
  const deep = 0.6 + 0.5 * noise(Math.floor(at), 3, 1, 8);
  return 0.075 * deep * Math.sin(at * 2 * Math.PI) + 0.03 * noise(x * 0.4, y * 0.4, 0, 9);
}

/** The splat from behind: piercings cut square, their edges left as they came from the saw. */
export function splatEdge(): Scene {
  const sawn = mahogany({
    along: 'y',
    board: 6,
    heart: [20, -70],
    gloss: 0.12,
    tone: [1.12, 1.1, 1.05],
    relief: sawLines,
    reliefStepMm: 0.2,
  });
  const face = mahogany({ along: 'y', board: 6, heart: [20, -70], gloss: 0.4 });
  return near(
    extrude([...left, ...right], fromFront(0), 11.1, sawn, { holes: [upper, lower], ends: face }),
    [-205, 62, 186],
    [2, 8, 4],
    { fieldDeg: 27, lamp: [-0.2, 0.86, 0.38], lampStrength: 1.9, shade: [0.2, 0.195, 0.185] },
  );
}
