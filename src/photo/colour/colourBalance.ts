import { colourDifference } from './colourDifference.ts';
import { type Lab, labOfLinear, labOfRgb, linearOf, type Rgb } from './colourSpace.ts';

/** A patch of known colour as the photograph has it, encoded 0–1 both. */
export type Patch = { nominal: Rgb; measured: Rgb };

/** How linear light of each channel is put right: light · gain + offset. */
export type Balance = { gain: Rgb; offset: Rgb };

/** A balance with what is left over after it. */
export type FittedBalance = {
  balance: Balance;
  /** The difference that stays at each patch, CIEDE2000. */
  residuals: number[];
  /** Standard uncertainty of each of L, a and b of a balanced colour; null where the patches leave nothing to tell it by. */
  sigma: Lab | null;
};

/**
 * Puts the colours of a photograph right by patches of known colour.
 *
 * Method: for each channel a straight line in linear light, fitted by least squares in which a patch counts as its lightness
 * is seen (the light of dark patches more). One patch sets the gain alone; two or more of different lightness also the
 * offset, which takes up stray light. What stays over at the patches, over what the fit left free, is the uncertainty.
 * Light of another colour on the piece than on the card, glare, and a camera that bends its colours are not put right.
 *
 * @param patches  at least one; grey ones, from dark to light, do best
 * @throws RangeError without patches, or where a patch is black in a channel while it stands alone
 * @source ours: least squares on the grey-card practice of photographers
 */
export function fitBalance(patches: readonly Patch[]): FittedBalance {
  if (patches.length === 0) throw new RangeError('fitBalance needs at least one patch');
  const lines = ([0, 1, 2] as const).map((channel) =>
    line(
      patches.map(({ nominal, measured }) => ({
        x: linearOf(measured[channel]),
        y: linearOf(nominal[channel]),
      })),
    ),
  );
  const [red, green, blue] = lines as [Line, Line, Line];
  const balance: Balance = {
    gain: [red.gain, green.gain, blue.gain],
    offset: [red.offset, green.offset, blue.offset],
  };
  const pairs = patches.map(({ nominal, measured }) => ({
    wanted: labOfRgb(nominal),
    got: balancedLab(measured, balance),
  }));
  const residuals = pairs.map(({ wanted, got }) => colourDifference(wanted, got));
  const free = patches.length - red.parameters;
  const spread = (pick: (lab: Lab) => number) =>
    Math.sqrt(pairs.reduce((sum, { wanted, got }) => sum + (pick(got) - pick(wanted)) ** 2, 0) / free);
  const sigma =
    free > 0 ? { L: spread(({ L }) => L), a: spread(({ a }) => a), b: spread(({ b }) => b) } : null;
  return { balance, residuals, sigma };
}

/** CIELAB (D65) of a colour of the photograph after the balance. */
export function balancedLab(measured: Rgb, { gain, offset }: Balance): Lab {
  const light = (channel: 0 | 1 | 2) => linearOf(measured[channel]) * gain[channel] + offset[channel];
  return labOfLinear([light(0), light(1), light(2)]);
}

type Line = { gain: number; offset: number; parameters: 1 | 2 };

function line(points: readonly { x: number; y: number }[]): Line {
  // A step of light at y is seen as a step of lightness in proportion to y^(-2/3).
  const weighed = points.map(({ x, y }) => ({ x, y, w: Math.max(y, 0.01) ** (-4 / 3) }));
  const sum = (of: (point: { x: number; y: number; w: number }) => number) =>
    weighed.reduce((total, point) => total + of(point), 0);
  const W = sum(({ w }) => w);
  const [meanX, meanY] = [sum(({ x, w }) => w * x) / W, sum(({ y, w }) => w * y) / W];
  const spreadX = sum(({ x, w }) => w * (x - meanX) ** 2);
  if (points.length > 1 && spreadX > W * 1e-6) {
    const gain = sum(({ x, y, w }) => w * (x - meanX) * (y - meanY)) / spreadX;
    return { gain, offset: meanY - gain * meanX, parameters: 2 };
  }
  const squares = sum(({ x, w }) => w * x * x);
  if (!(squares > 0)) throw new RangeError('fitBalance needs a patch that is not black in the photograph');
  return { gain: sum(({ x, y, w }) => w * x * y) / squares, offset: 0, parameters: 1 };
}
