import type { Picture } from '../src/photo/picture.ts';
import { type Random, randomFrom } from '../test/kits/surfaces/random.ts';
import { near } from './plates/chairs/studio.ts';
import { drawScene } from './plates/render/drawScene.ts';
import type { Look, Scene } from './plates/render/scene.ts';
import { planerRipple } from './plates/sideChair/planerRipple.ts';
import { box } from './plates/solids/extrude.ts';
import { noise } from './plates/woods/noise.ts';
import { type WoodKind, wood } from './plates/woods/wood.ts';

/** A board drawn by the renderer of the plates, which shares nothing with renderMarks but the tables of chance. */
export type PlateBoard = { picture: Picture; mmPerPx: number; pitchMm: number };

export type PlateKind = 'rotary-planer' | 'straight-saw' | 'circular-saw' | 'band-saw';
export const plateKinds: readonly PlateKind[] = ['rotary-planer', 'straight-saw', 'circular-saw', 'band-saw'];

const [widthPx, heightPx] = [560, 420];
const woods: readonly WoodKind[] = ['mahogany', 'cherry', 'birch', 'pine'];

/** The plate of a rail’s inside with a planer’s ripple, as the example shows it, before JPEG. */
export function planerPlate(): Picture {
  return { widthPx: 1600, heightPx: 1200, channels: 3, pixels: drawScene(planerRipple(), 1600, 1200) };
}

/** A board with marks of one kind, its length along the rows, seen nearly square, in the lamp and the woods of the plates. */
export function plateBoard(kind: PlateKind, seed: number): PlateBoard {
  const random = randomFrom(seed);
  const { relief, pitchMm } = reliefOf(kind, random);
  const highMm = random.between(58, 80);
  const far = 300;
  const look = wood(woods[seed % woods.length] as WoodKind, {
    along: 'x',
    board: seed,
    heart: [random.between(-120, 120), random.between(60, 160)],
    fineMm: highMm / heightPx,
    gloss: random.between(0.1, 0.35),
    relief,
    reliefStepMm: 0.1,
  });
  const scene: Scene = near(
    box([-160, -120, -24], [160, 120, 0], look),
    [random.between(-25, 25), random.between(-25, 25), far],
    [0, 0, 0],
    {
      fieldDeg: (360 / Math.PI) * Math.atan(highMm / 2 / far),
      lamp: [-1, random.between(-0.5, 0.5), random.between(0.15, 0.3)],
      lampStrength: random.between(1.8, 2.8),
      roomStrength: random.between(0.2, 0.45),
    },
  );
  const pixels = drawScene(scene, widthPx, heightPx);
  return { picture: { widthPx, heightPx, channels: 3, pixels }, mmPerPx: highMm / heightPx, pitchMm };
}

type Relief = NonNullable<Look['relief']>;

function reliefOf(kind: PlateKind, random: Random): { relief: Relief; pitchMm: number } {
  if (kind === 'rotary-planer') {
    const pitchMm = random.between(1.3, 3.2);
    const deep = random.between(0.008, 0.03);
    const relief: Relief = (x, y) =>
      deep * Math.abs(Math.sin((Math.PI * x) / pitchMm)) * (0.85 + 0.2 * noise(x * 0.02, y * 0.05, 0, 4));
    return { relief: (x, y, z) => -relief(x, y, z), pitchMm };
  }
  const [pitchMm, uneven, deep, wide] =
    kind === 'straight-saw'
      ? [random.between(2.6, 5.5), random.between(0.2, 0.35), random.between(0.03, 0.1), 0.5]
      : kind === 'circular-saw'
        ? [random.between(2, 4.5), random.between(0.04, 0.1), random.between(0.02, 0.05), 0.45]
        : [random.between(1.1, 2), random.between(0.07, 0.14), random.between(0.012, 0.03), 0.3];
  const radius = random.between(150, 400);
  const lines: { at: number; deep: number; lean: number }[] = [];
  for (let at = -90; at < 90; at += pitchMm * Math.max(0.3, 1 + uneven * random.normal()))
    lines.push({
      at,
      deep: deep * random.between(0.4, 1.2),
      lean: kind === 'straight-saw' ? 0.06 + 0.01 * random.normal() : 0.02,
    });
  const relief: Relief = (x, y) => {
    const bow = kind === 'circular-saw' ? radius - Math.sqrt(radius * radius - y * y) : 0;
    let height = 0;
    for (const line of lines) {
      const off = (x - line.at - line.lean * y - bow) / wide;
      if (off > -2 && off < 2) height -= line.deep * Math.exp(-3 * off * off);
    }
    return height;
  };
  return { relief, pitchMm };
}

/** Regions of `planerPlate`, its scale and the board’s direction there; the last two take in the rail’s edges. */
export const platePlaces = {
  left: { region: { x: 40, y: 300, widthPx: 500, heightPx: 400 }, mmPerPx: 0.085, directionRad: -0.157 },
  middle: { region: { x: 500, y: 250, widthPx: 500, heightPx: 400 }, mmPerPx: 0.095, directionRad: -0.175 },
  right: { region: { x: 950, y: 200, widthPx: 500, heightPx: 380 }, mmPerPx: 0.1, directionRad: -0.19 },
  long: { region: { x: 300, y: 300, widthPx: 700, heightPx: 420 }, mmPerPx: 0.09, directionRad: -0.175 },
  low: { region: { x: 700, y: 500, widthPx: 400, heightPx: 350 }, mmPerPx: 0.095, directionRad: -0.2 },
  'lower edge': {
    region: { x: 1000, y: 500, widthPx: 450, heightPx: 400 },
    mmPerPx: 0.1,
    directionRad: -0.21,
  },
  'upper edge': {
    region: { x: 300, y: 20, widthPx: 500, heightPx: 350 },
    mmPerPx: 0.09,
    directionRad: -0.13,
  },
} as const;
