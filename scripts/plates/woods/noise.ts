/** Smooth chance in space: −1 to 1, the same for the same place and seed on every machine. */
export function noise(x: number, y: number, z: number, seed: number): number {
  const xi = Math.floor(x);
  const yi = Math.floor(y);
  const zi = Math.floor(z);
  const u = ease(x - xi);
  const v = ease(y - yi);
  const w = ease(z - zi);
  const x0 = Math.imul(xi, forX);
  const x1 = (x0 + forX) | 0;
  const start = (Math.imul(yi, forY) + Math.imul(zi, forZ) + Math.imul(seed, forSeed)) | 0;
  const up = (start + forY) | 0;
  const deep = (start + forZ) | 0;
  const both = (up + forZ) | 0;
  const near = mix(mix(mixed(x0 + start), mixed(x1 + start), u), mix(mixed(x0 + up), mixed(x1 + up), u), v);
  const far = mix(mix(mixed(x0 + deep), mixed(x1 + deep), u), mix(mixed(x0 + both), mixed(x1 + both), u), v);
  return mix(near, far, w);
}

/** One number of chance for a cell: −1 to 1. */
export function chance(x: number, y: number, z: number, seed: number): number {
  return mixed(Math.imul(x, forX) + Math.imul(y, forY) + Math.imul(z, forZ) + Math.imul(seed, forSeed));
}

/** Odd numbers that spread the cells over the whole range. */
const forX = 374761393;
const forY = 668265263;
const forZ = 1440662683;
const forSeed = 974634617;

/** Stirs the bits of a number until nothing of its order is left (multipliers of xxHash32's last step). */
function mixed(from: number): number {
  let h = from | 0;
  h = Math.imul(h ^ (h >>> 15), 2246822519);
  h = Math.imul(h ^ (h >>> 13), 3266489917);
  return ((h ^ (h >>> 16)) >>> 0) / 2147483648 - 1;
}

const ease = (t: number) => t * t * (3 - 2 * t);
const mix = (a: number, b: number, t: number) => a + (b - a) * t;
