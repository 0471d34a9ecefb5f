import type { Look, Out } from '../render/scene.ts';
import type { Vec } from '../render/vector.ts';
import { chance, noise } from './noise.ts';

type Rgb = readonly [number, number, number];

/** Colours of spring and summer wood and of the pores; rings in mm; how strongly each of them tells. */
type Kind = {
  light: Rgb;
  dark: Rgb;
  pore: Rgb;
  ringMm: number;
  rings: number;
  pores: number;
  ribbon: number;
};

const kinds = {
  mahogany: {
    light: [0.2, 0.078, 0.04],
    dark: [0.098, 0.034, 0.018],
    pore: [0.05, 0.016, 0.008],
    ringMm: 9,
    rings: 0.45,
    pores: 0.75,
    ribbon: 0.5,
  },
  cherry: {
    light: [0.27, 0.115, 0.046],
    dark: [0.145, 0.054, 0.021],
    pore: [0.11, 0.04, 0.016],
    ringMm: 5,
    rings: 0.6,
    pores: 0.22,
    ribbon: 0.2,
  },
  birch: {
    light: [0.5, 0.31, 0.15],
    dark: [0.4, 0.235, 0.11],
    pore: [0.22, 0.11, 0.05],
    ringMm: 4.5,
    rings: 0.75,
    pores: 0.25,
    ribbon: 0.35,
  },
  pine: {
    light: [0.5, 0.31, 0.135],
    dark: [0.31, 0.155, 0.055],
    pore: [0.2, 0.1, 0.04],
    ringMm: 3.4,
    rings: 0.85,
    pores: 0.08,
    ribbon: 0.1,
  },
} satisfies Record<string, Kind>;
export type WoodKind = keyof typeof kinds;

export type WoodOptions = {
  /** The way the grain runs. */
  along?: 'x' | 'y' | 'z';
  /** Chooses the board: another number, another board. */
  board?: number;
  /** Where the heart of the tree was, seen along the grain, mm. */
  heart?: readonly [number, number];
  /** Multiplies the colour: age, dirt, stain. */
  tone?: Rgb;
  /** Millimetres of the picture's finest detail: grain finer than this is left out. */
  fineMm?: number;
  gloss?: number;
  relief?: Look['relief'];
  reliefStepMm?: number;
  /** Changes the colour at a place, after the wood: dirt, wear, stain. */
  over?: (place: Vec, out: Out) => void;
};

/** Solid wood: rings about a heart, fibres and pores along the grain; cut it anywhere and the end grain is right. */
export function wood(kind: WoodKind, options: WoodOptions = {}): Look {
  const { light, dark, pore, ringMm, rings, pores, ribbon }: Kind = kinds[kind];
  const { along = 'y', board = 1, tone = [1, 1, 1], fineMm = 0.12, over } = options;
  const [hb, hc] = options.heart ?? [70 + 40 * chance(board, 1, 0, 7), -90 + 50 * chance(board, 2, 0, 7)];
  const thin = Math.max(0, Math.min(1, 0.5 / fineMm - 0.2));
  return {
    gloss: options.gloss ?? 0.35,
    relief: options.relief,
    reliefStepMm: options.reliefStepMm,
    colour(x, y, z, out) {
      const a = along === 'x' ? x : along === 'y' ? y : z;
      const b = along === 'x' ? y : x;
      const c = along === 'z' ? y : along === 'x' ? z : z;
      const sway =
        5 * noise(a * 0.006, b * 0.012, c * 0.012, board) +
        1.1 * noise(a * 0.02, b * 0.06, c * 0.06, board + 1);
      const r = Math.sqrt((b - hb) ** 2 + (c - hc) ** 2) / ringMm + (sway * 3) / ringMm;
      const ring = r - Math.floor(r);
      const late = ring < 0.75 ? ring * ring * 1.2 : (1 - ring) * 2.7;
      const streak = 0.5 + 0.5 * noise(a * 0.012, b * 0.35, c * 0.35, board + 2);
      const cloud = 0.5 + 0.5 * noise(a * 0.01, b * 0.02, c * 0.02, board + 3);
      let deep = rings * late + ribbon * (streak * 0.55 + cloud * 0.45 - 0.5) + 0.22;
      if (thin > 0) deep += thin * 0.16 * noise(a * 0.07, b * 1.9, c * 1.9, board + 4);
      deep = Math.max(0, Math.min(1, deep));
      let open = 0;
      if (thin > 0 && pores > 0) {
        const fleck = noise(a * 0.2, b * 4.4, c * 4.4, board + 5);
        open = fleck > 0.42 ? Math.min(1, (fleck - 0.42) * 2.6) * pores * thin : 0;
      }
      for (let k = 0; k < 3; k++) {
        const base = (light[k] as number) + ((dark[k] as number) - (light[k] as number)) * deep;
        out[k] = (base + ((pore[k] as number) - base) * open) * (tone[k] as number);
      }
      over?.([x, y, z], out);
    },
  };
}

/** One colour all over, with a little cloud in it. */
export function plain(rgb: Rgb, gloss = 0, cloud = 0.06): Look {
  return {
    gloss,
    colour(x, y, z, out) {
      const by = 1 + cloud * noise(x * 0.02, y * 0.02, z * 0.02, 3);
      for (let k = 0; k < 3; k++) out[k] = (rgb[k] as number) * by;
    },
  };
}
