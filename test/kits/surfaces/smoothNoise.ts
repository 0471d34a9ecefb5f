/**
 * A smooth random height over a plane, about −1 to 1, whose hills are one unit apart; another plane for each seed.
 *
 * Method: random heights at whole numbers, blended between by a smooth step (value noise, common practice).
 */
export function smoothNoise(seed: number, x: number, y: number): number {
  const left = Math.floor(x);
  const top = Math.floor(y);
  const across = blend(x - left);
  const down = blend(y - top);
  const upper = height(seed, left, top) * (1 - across) + height(seed, left + 1, top) * across;
  const lower = height(seed, left, top + 1) * (1 - across) + height(seed, left + 1, top + 1) * across;
  return upper * (1 - down) + lower * down;
}

function blend(share: number): number {
  return share * share * (3 - 2 * share);
}

/** −1 to 1, scattered by whole numbers. */
function height(seed: number, x: number, y: number): number {
  let mixed = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(seed, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 31 - 1;
}
