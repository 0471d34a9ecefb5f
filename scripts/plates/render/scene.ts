import type { Vec } from './vector.ts';

/** Three numbers that a function writes its answer into, so that no array is made for each pixel. */
export type Out = Float64Array;

/** What a surface looks like: colours are shares of light given back (linear), places in the part's own frame. */
export type Look = {
  colour: (x: number, y: number, z: number, out: Out) => void;
  /** How far the surface stands out of its face, mm; it bends the light and not the outline. */
  relief?: (x: number, y: number, z: number) => number;
  /** The step over which the slope of the relief is taken, mm. */
  reliefStepMm?: number;
  /** 0 dull to 1 polished. */
  gloss: number;
};

/** A flat face: its outline and the holes in it, all in one plane; corners run anticlockwise seen from outside. */
export type Face = {
  loops: Vec[][];
  normal: Vec;
  look: Look;
  /** For a facet of a curved surface: the direction of the surface itself at a place. */
  normalAt?: (x: number, y: number, z: number, out: Out) => void;
  /** From the picture's frame to the part's own: nine numbers of the turn by rows, then the place that is its origin. */
  own?: { turn: readonly number[]; origin: Vec };
  /** Left out of the casting of shadows (the ground a thing stands on). */
  castsNone?: boolean;
};

export type Scene = {
  faces: Face[];
  eye: Vec;
  target: Vec;
  /** Height of the picture as an angle, degrees. */
  fieldDeg: number;
  /** Direction toward the lamp. */
  lamp: Vec;
  /** Strength of the lamp and of the light from all round. */
  lampStrength: number;
  roomStrength: number;
  /** How far apart things darken each other, mm. */
  nearnessMm: number;
};
