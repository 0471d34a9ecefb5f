/** Smooth chance in space: −1 to 1, the same for the same place and seed on every machine. */
export function noise(x: number, y: number, z: number, seed: number): number {
  const xi = Math.floor(x);
  const yi = Math.floor(y);
  const zi = Math.floor(z);
  const u = ease(x - xi);
  const v = ease(y - yi);
  const w = ease(z - zi);
  const near = mix(
    mix(chance(xi, yi, zi, seed), chance(xi + 1, yi, zi, seed), u),
    mix(chance(xi, yi + 1, zi, seed), chance(xi + 1, yi + 1, zi, seed), u),
    v,
  );
  const far = mix(
    mix(chance(xi, yi, zi + 1, seed), chance(xi + 1, yi, zi + 1, seed), u),
    mix(chance(xi, yi + 1, zi + 1, seed), chance(xi + 1, yi + 1, zi + 1, seed), u),
    v,
  );
  return mix(near, far, w);
}

/** One number of chance for a cell: −1 to 1. */
export function chance(x: number, y: number, z: number, seed: number): number {
  let h = (Math.imul(x, 374761393) + Math.imul(y, 668265263) + Math.imul(z, 1440662683)) | 0;
  h = (h + Math.imul(seed, 974634617)) | 0;
  h = Math.imul(h ^ (h >>> 15), 2246822519);
  h = Math.imul(h ^ (h >>> 13), 3266489917);
  return ((h ^ (h >>> 16)) >>> 0) / 2147483648 - 1;
}

const ease = (t: number) => t * t * (3 - 2 * t);
const mix = (a: number, b: number, t: number) => a + (b - a) * t;
