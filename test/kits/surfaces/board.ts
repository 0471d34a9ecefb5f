import { randomFrom } from './random.ts';
import { smoothNoise } from './smoothNoise.ts';

/**
 * A board of known truth: where its plane lies in the trunk, how the trunk grew, and how its wood looks. Lengths in millimetres;
 * on the board x runs across and z along it. The pith may lie outside the board, as it mostly does.
 */
export type BoardSettings = {
  /** What grew: ring widths and everything random follow from it. */
  seed: number;
  ringMm: number;
  /** Spread of the ring widths, as the standard deviation of their logarithm. */
  ringSpread: number;
  /** How much darker latewood is, as a natural logarithm of light. */
  ringContrast: number;
  /** Where the pith lies at z = 0: beside the board's middle, and below its face. */
  pithAcrossMm: number;
  pithDepthMm: number;
  /** How fast the pith moves sideways and deeper along the board, mm a mm. */
  tiltAcross: number;
  tiltDepth: number;
  /** How far rings stray from circles. */
  wanderMm: number;
  fibreContrast: number;
  poreContrast: number;
  /** 0: pores anywhere; 1: only in the wood that grew in spring. */
  ringPorous: number;
  curlStrength: number;
  curlPitchMm: number;
  fleckStrength: number;
};

/** How much light a place of the board takes away, as a natural logarithm: 0 is the wood's lightest. */
export type Board = (xMm: number, zMm: number) => number;

const stepMm = 0.05;

/**
 * A board sawn from a trunk whose rings are the only truth: the same settings give the same rings at every place, so that
 * a second look further along the board shows them where they have drifted to.
 *
 * Method: rings are tubes about a tilted, wandering pith; a place's distance from the pith gives its ring and how far through
 * it; latewood is darker. Fibres and pores follow the pith's line and last centimetres and millimetres. Ours.
 */
export function board(settings: BoardSettings): Board {
  const { seed, pithAcrossMm, pithDepthMm, tiltAcross, tiltDepth, wanderMm } = settings;
  const rings = ringTable(settings);
  return (x, z) => {
    const curl = settings.curlStrength > 0 ? curlPhase(settings, x, z) : 0;
    const bend =
      1.5 * wanderMm * smoothNoise(seed + 11, z / 160, 0.5) +
      0.25 * settings.curlStrength * curl * settings.ringMm;
    const aside = x - pithAcrossMm - tiltAcross * z - bend;
    const radius =
      Math.hypot(aside, pithDepthMm + tiltDepth * z) + wanderMm * smoothNoise(seed + 12, x / 22, z / 90);
    const late = lookUp(rings, radius);
    const fibre =
      smoothNoise(seed + 13, aside / 0.7, z / 25) + 0.6 * smoothNoise(seed + 14, aside / 0.3, z / 10);
    const pore =
      Math.max(0, smoothNoise(seed + 15, aside / 0.28, z / 4) - 0.45) *
      (1 - settings.ringPorous * Math.min(1, 1.6 * late));
    const fleck = settings.fleckStrength > 0 ? Math.max(0, smoothNoise(seed + 16, x / 4, z / 0.9) - 0.5) : 0;
    return (
      settings.ringContrast * late +
      settings.fibreContrast * fibre +
      settings.poreContrast * pore -
      settings.fleckStrength * fleck +
      settings.curlStrength * 0.2 * curl
    );
  };
}

/** Waves of the fibre along the board: bright and dark bars across it, neither straight nor even. */
function curlPhase({ seed, curlPitchMm }: BoardSettings, x: number, z: number): number {
  return Math.sin((2 * Math.PI * z) / curlPitchMm + 2.5 * smoothNoise(seed + 17, x / 15, z / 60));
}

/** How late in its year the wood at each distance from the pith grew, 0–1, every twentieth of a millimetre. */
function ringTable({ seed, ringMm, ringSpread, pithAcrossMm, pithDepthMm }: BoardSettings): Float32Array {
  const random = randomFrom(seed);
  const furthest = Math.hypot(Math.abs(pithAcrossMm) + 160, Math.abs(pithDepthMm) + 60);
  const table = new Float32Array(Math.ceil(furthest / stepMm));
  let slow = random.normal();
  let start = 0;
  while (start < table.length) {
    slow = 0.6 * slow + 0.8 * random.normal();
    const width = Math.max(4, Math.round((ringMm * Math.exp(ringSpread * slow)) / stepMm));
    const dark = Math.exp(0.25 * random.normal());
    const sharpness = random.between(2, 4);
    for (let step = 0; step < width && start + step < table.length; step++) {
      table[start + step] = dark * (step / width) ** sharpness;
    }
    start += width;
  }
  return table;
}

function lookUp(table: Float32Array, radiusMm: number): number {
  const at = Math.min(table.length - 2, Math.max(0, radiusMm / stepMm));
  const below = Math.floor(at);
  const share = at - below;
  return (table[below] as number) * (1 - share) + (table[below + 1] as number) * share;
}
