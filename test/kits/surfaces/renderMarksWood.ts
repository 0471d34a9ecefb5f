import type { Random } from './random.ts';
import { smoothNoise } from './smoothNoise.ts';

/**
 * The wood’s own colour on a board’s face, as a share of `base`.
 *
 * Method: rings, streaks, broad zones, ribbons that change along the board, and pores: dark flecks of 1.5 to 9 mm along the grain, few or many, on some boards hardly any.
 */
export function woodOf(
  random: Random,
  seed: number,
  base: number,
  turnRad: number,
  mmPerPx: number,
): (x: number, y: number) => number {
  const loud = Math.exp(random.between(Math.log(0.35), Math.log(1.8)));
  const [rings, streaks, zones, ribbons] = [
    loud * random.between(0, 0.16),
    loud * random.between(0.01, 0.07),
    loud * random.between(0, 0.08),
    loud * random.between(0, 0.08),
  ];
  const [pores, fewer, longMm, broadMm] = [
    random.share() < 0.25 ? 0.03 : random.between(0.05, 0.75),
    random.between(0.3, 0.65),
    random.between(1.5, 9),
    random.between(0.18, 0.4),
  ];
  const [ringMm, ribbonMm] = [random.between(2, 12), random.between(15, 70)];
  const [cos, sin] = [Math.cos(turnRad) * mmPerPx, Math.sin(turnRad) * mmPerPx];
  return (x, y) => {
    const along = cos * x + sin * y;
    const across = cos * y - sin * x;
    const sway = 3 * smoothNoise(seed + 5, along / 90, 0.5);
    const ring = Math.sin((2 * Math.PI * (across + sway)) / ringMm);
    const streak = smoothNoise(seed + 6, across / 0.7, along / 35);
    const zone = smoothNoise(seed + 8, across / 14, along / 300);
    const ribbon = smoothNoise(seed + 10, along / ribbonMm, across / 40);
    // Each row of pores has its own start, so that they do not stand in line across the board.
    const [row, off] = [Math.round((across + sway) / broadMm), (across + sway) / broadMm];
    const fleck = smoothNoise(seed + 7, row, along / longMm + 50 * smoothNoise(seed + 11, row, 0));
    const pore = Math.min(1, Math.max(0, 2.6 * (fleck - fewer))) * (1 - 4 * (off - row) ** 2);
    const light = 1 - rings * ring * 0.5 - streaks * streak - zones * zone - ribbons * ribbon;
    return base * Math.max(0.1, light) * (1 - pores * pore);
  };
}
