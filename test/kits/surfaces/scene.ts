import type { Picture, Region } from '../../../src/photo/picture.ts';
import { type Board, type BoardSettings, board } from './board.ts';
import { type Camera, photographed } from './photographed.ts';
import { smoothNoise } from './smoothNoise.ts';

/** What lies on the wood of one side: a stain, or paint that hides it. */
export type Surface = {
  /** Light that bare wood gives back, 0–1, before its figure. */
  light: number;
  /** Share of the wood's figure that still shows: 1 bare, 0 under paint. */
  shows: number;
  /** Marks that a brush left along the part, as a natural logarithm of light. */
  brush: number;
  /** Dirt, wear and bleaching in patches some millimetres wide, and scratches along the part, as a natural logarithm of light. */
  soil: number;
  /** Tells the soil and strokes of one side from those of the other. */
  seed: number;
};

/** A part that a band crosses: a cuff, a joint, a patch. Its upper side is drawn first. */
export type Scene = {
  upper: { board: BoardSettings; surface: Surface };
  lower: { board: BoardSettings; surface: Surface };
  widthMm: number;
  upperMm: number;
  bandMm: number;
  lowerMm: number;
  band: 'paint' | 'cross-grain' | 'dark';
  camera: Camera;
};

/** A rendered photograph with the two regions that an examiner would draw, and the direction of the part. */
export type RenderedScene = { picture: Picture; a: Region; b: Region; directionDeg: number; pxPerMm: number };

/** Photographs a part whose truth is known. */
export function renderScene(scene: Scene): RenderedScene {
  const { widthMm, upperMm, bandMm, lowerMm, camera } = scene;
  const upper = sideOf(scene.upper);
  const lower = sideOf(scene.lower);
  const band = bandOf(scene);
  const lengthMm = upperMm + bandMm + lowerMm;
  const light = (xMm: number, zMm: number) => {
    if (zMm < upperMm) return upper(xMm, zMm);
    return zMm < upperMm + bandMm ? band(xMm, zMm) : lower(xMm, zMm);
  };
  const picture = photographed(light, { widthMm, lengthMm }, camera);
  const px = camera.pxPerMm;
  // What keeps a region clear of the part's edges and of the band where the picture is turned or in perspective.
  const inset = Math.ceil(
    2 +
      (Math.abs(camera.turnDeg) * Math.PI * widthMm * px) / 360 +
      Math.abs(camera.perspective) * widthMm * px * 0.25,
  );
  const region = (fromMm: number, toMm: number): Region => {
    const top = Math.round(fromMm * px) + inset;
    const left = Math.min(inset, Math.floor(0.1 * widthMm * px));
    return {
      x: left,
      y: top,
      widthPx: picture.widthPx - 2 * left,
      heightPx: Math.round(toMm * px) - inset - top,
    };
  };
  return {
    picture,
    a: region(0, upperMm),
    b: region(upperMm + bandMm, lengthMm),
    directionDeg: 90 + camera.turnDeg + camera.aimDeg,
    pxPerMm: px,
  };
}

function sideOf({ board: settings, surface }: Scene['upper']): Board {
  const wood = board(settings);
  const { light, shows, brush, soil, seed } = surface;
  return (x, z) => {
    const figure = shows > 0 ? shows * wood(x, z) : 0;
    const strokes = brush > 0 ? brush * smoothNoise(seed + 31, x / 0.8, z / 35) : 0;
    const soiled = soil > 0 ? soil * soilAt(seed, x, z) : 0;
    return light * Math.exp(-figure - strokes - soiled);
  };
}

function soilAt(seed: number, x: number, z: number): number {
  const scratch = Math.max(0, smoothNoise(seed + 34, x / 0.5, z / 15) - 0.75);
  return smoothNoise(seed + 32, x / 6, z / 6) + 0.5 * smoothNoise(seed + 33, x / 2, z / 2.5) + 4 * scratch;
}

function bandOf({ band, upper }: Scene): Board {
  const seed = upper.board.seed + 41;
  if (band === 'cross-grain') return (x, z) => 0.3 * Math.exp(-0.3 * smoothNoise(seed, z / 0.8, x / 40));
  return band === 'paint' ? () => 0.55 : () => 0.03;
}
