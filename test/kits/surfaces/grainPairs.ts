import type { BoardSettings } from './board.ts';
import type { Camera } from './photographed.ts';
import { type Random, randomFrom } from './random.ts';
import { type RenderedScene, renderScene, type Scene, type Surface } from './scene.ts';

/** Kinds of surface that a band may cross, as a proof has to try them. */
export const grainKinds = [
  'straight',
  'cathedral',
  'curly',
  'plain',
  'painted',
  'noisy',
  'perspective',
  'stained-apart',
] as const;
export type GrainKind = (typeof grainKinds)[number];

export type GrainPair = {
  kind: GrainKind;
  onePiece: boolean;
  rendered: RenderedScene;
  /** Where the upper board's pith runs in the picture, which straight grain follows: from the x axis towards y. */
  trueGrainDeg: number;
};

/**
 * A part crossed by a band, drawn by chance within its kind: one board that goes on under the band, or two boards of one wood.
 *
 * The second board of a pair of two is a hard case: the same wood, mean ring width, contrast, way of cutting and almost the
 * same place in the trunk; only another tree grew it.
 *
 * @param seed    the same seed gives the same pair, whatever was drawn before
 * @param detail  pixels a millimetre against the camera's own, to render faster
 */
export function grainPair(kind: GrainKind, onePiece: boolean, seed: number, detail = 1): GrainPair {
  const scene = grainScene(kind, onePiece, seed);
  scene.camera.pxPerMm *= detail;
  const { tiltAcross } = scene.upper.board;
  const trueGrainDeg = 90 + scene.camera.turnDeg - (Math.atan(tiltAcross) * 180) / Math.PI;
  return { kind, onePiece, rendered: renderScene(scene), trueGrainDeg };
}

export function grainScene(kind: GrainKind, onePiece: boolean, seed: number): Scene {
  const random = randomFrom(seed);
  const wood = woodOf(kind, random, seed);
  const surface = surfaceOf(kind, random, seed);
  const camera = cameraOf(kind, random, seed);
  const widthMm = random.between(30, 90);
  return {
    upper: { board: wood, surface },
    lower: {
      board: onePiece ? wood : anotherTree(wood, random, seed),
      surface: otherSide(kind, surface, random),
    },
    widthMm,
    upperMm: widthMm * random.between(0.4, 1),
    bandMm: random.between(6, 50),
    lowerMm: widthMm * random.between(0.4, 1),
    band: random.share() < 0.4 ? 'cross-grain' : random.share() < 0.5 ? 'paint' : 'dark',
    camera,
  };
}

function woodOf(kind: GrainKind, random: Random, seed: number): BoardSettings {
  const cut = kind === 'cathedral' ? 'flat' : random.share() < 0.5 ? 'quarter' : 'rift';
  const plain = kind === 'plain';
  const contrast = plain ? random.between(0, 0.02) : random.between(0.08, 0.5);
  const side = random.share() < 0.5 ? -1 : 1;
  return {
    seed,
    ringMm: random.between(1, 3.2),
    ringSpread: random.between(0.08, 0.45),
    ringContrast: contrast,
    pithAcrossMm: cut === 'flat' ? random.between(-15, 15) : side * random.between(90, 140),
    pithDepthMm:
      cut === 'flat'
        ? random.between(15, 40)
        : cut === 'rift'
          ? random.between(50, 90)
          : random.between(0, 15),
    tiltAcross: 0.02 * random.normal(),
    tiltDepth: (cut === 'flat' ? 0.06 : 0.02) * random.normal(),
    wanderMm: random.between(0.2, 1.2),
    fibreContrast: plain ? random.between(0, 0.008) : random.between(0.02, 0.06),
    poreContrast: plain ? 0 : random.share() < 0.5 ? random.between(0, 0.1) : random.between(0.2, 0.8),
    ringPorous: random.share() < 0.4 ? 1 : 0,
    curlStrength: kind === 'curly' ? random.between(0.5, 1.5) : 0,
    curlPitchMm: random.between(4, 10),
    fleckStrength: cut === 'quarter' && !plain && random.share() < 0.5 ? random.between(0.1, 0.4) : 0,
  };
}

function anotherTree(wood: BoardSettings, random: Random, seed: number): BoardSettings {
  return {
    ...wood,
    seed: seed + 1_000_003,
    ringMm: wood.ringMm * random.between(0.92, 1.08),
    pithAcrossMm: wood.pithAcrossMm + 3 * random.normal(),
    pithDepthMm: wood.pithDepthMm + 2 * random.normal(),
    tiltAcross: wood.tiltAcross + 0.01 * random.normal(),
    tiltDepth: wood.tiltDepth + 0.01 * random.normal(),
  };
}

function surfaceOf(kind: GrainKind, random: Random, seed: number): Surface {
  const light = random.between(0.12, 0.5);
  const soil = random.share() < 0.6 ? random.between(0.01, 0.12) : 0;
  if (kind !== 'painted')
    return { light, shows: 1, brush: 0, soil: kind === 'plain' ? 0.2 * soil : soil, seed };
  return {
    light,
    shows: 0,
    brush: random.share() < 0.5 ? 0 : random.between(0.005, 0.03),
    soil: 0.3 * soil,
    seed,
  };
}

/** Lit and soiled on its own; stained apart, also cleaned, faded or stained so that its figure is fainter or stronger. */
function otherSide(kind: GrainKind, surface: Surface, random: Random): Surface {
  const own = { ...surface, seed: surface.seed + 500_009 };
  if (kind !== 'stained-apart') return { ...own, light: surface.light * random.between(0.9, 1.1) };
  return { ...own, light: surface.light * Math.exp(0.5 * random.normal()), shows: random.between(0.5, 1.2) };
}

function cameraOf(kind: GrainKind, random: Random, seed: number): Camera {
  const noisy = kind === 'noisy';
  const receding = kind === 'perspective';
  return {
    seed: seed + 7,
    pxPerMm: random.between(2.8, 4.5),
    turnDeg: 1.5 * random.normal(),
    aimDeg: random.normal(),
    perspective: (receding ? 0.1 : 0.01) * random.between(-1, 1),
    lightAcross: (receding ? 0.4 : 0.15) * random.between(-1, 1),
    lightDown: (receding ? 0.4 : 0.15) * random.between(-1, 1),
    lightDroop: random.between(0, receding ? 0.2 : 0.08),
    gloss: random.share() < 0.3 ? random.between(0, 0.08) : 0,
    blurPx: noisy ? random.between(1, 2.2) : random.between(0.5, 0.9),
    noise: noisy ? random.between(0.03, 0.08) : random.between(0.004, 0.015),
  };
}
