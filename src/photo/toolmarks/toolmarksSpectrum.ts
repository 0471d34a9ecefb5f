import FFT from 'fft.js';
import { sum } from '../../ground/statistics.ts';

/** What a profile’s spectrum tells of marks at even distances. */
export type Pitch = {
  pitchMm: number;
  /** Share of the power that lies in the strongest period and its first two multiples: 1 a clean wave, near 0 none. */
  regularity: number;
  /** Fisher’s statistic of the strongest ordinate, and the chance of one so strong where nothing is periodic. */
  fisherG: number;
  chance: number;
};

/**
 * The spacing of marks along a profile.
 *
 * Method: Hann’s window, zeros to sixteen times the length, the highest peak between the shortest and longest period, its top by a
 * parabola through the logarithms. Where half of that frequency holds a third of its power or more, every second mark stands out, and
 * the peak stays the mark’s own. Regularity is the power within two bins of the peak and of its second and third multiple over all between the same
 * bounds. Fisher’s g is the greatest of the plain ordinates 1 to (n − 1)/2 over their sum.
 *
 * @param profile   number[n], n ≥ 16
 * @param stepMm    between samples
 * @param shortMm   shortest period looked for, at least two steps
 * @param longMm    longest
 * @accuracy period within 3 in 100 on two profiles of known period, g within 1e-6 of the values in test/reference/profiles.json
 * @source periodogram, common practice; Fisher 1929 for g
 */
export function markPitch(
  profile: readonly number[] | Float64Array,
  stepMm: number,
  shortMm: number,
  longMm: number,
): Pitch {
  const n = profile.length;
  if (n < 16) throw new RangeError(`markPitch needs 16 samples, got ${n}`);
  const mean = Array.from(profile).reduce((sum, each) => sum + each, 0) / n;
  const windowed = Array.from(
    profile,
    (each, index) => (each - mean) * (0.5 - 0.5 * Math.cos((2 * Math.PI * index) / (n - 1))),
  );
  const size = 2 ** Math.ceil(Math.log2(16 * n));
  const power = spectrum(windowed, size);
  const binOf = (periodMm: number) => (size * stepMm) / periodMm;
  const first = Math.max(1, Math.ceil(binOf(longMm)));
  const last = Math.min(size / 2 - 2, Math.floor(binOf(shortMm)));
  let peak = first;
  for (let bin = first; bin <= last; bin++) if ((power[bin] as number) > (power[peak] as number)) peak = bin;
  const [low, top, high] = [-1, 0, 1].map((by) => Math.log((power[peak + by] as number) + 1e-300)) as [
    number,
    number,
    number,
  ];
  const bend = low - 2 * top + high;
  const exact = peak + (bend < 0 ? (low - high) / (2 * bend) : 0);
  const wide = (2 * size) / n;
  let [held, all] = [0, 0];
  for (let bin = first; bin <= last; bin++) {
    all += power[bin] as number;
    if ([1, 2, 3].some((multiple) => Math.abs(bin - multiple * exact) <= wide)) held += power[bin] as number;
  }
  return { pitchMm: (size * stepMm) / exact, regularity: all > 0 ? held / all : 0, ...fisher(profile) };
}

/** Fisher’s g and its chance: the sum over j of (−1)^(j−1) C(M, j) (1 − j g)^(M−1). */
export function fisher(profile: readonly number[] | Float64Array): { fisherG: number; chance: number } {
  const n = profile.length;
  const ordinates = Math.floor((n - 1) / 2);
  const powers: number[] = [];
  for (let k = 1; k <= ordinates; k++) {
    let [real, imaginary] = [0, 0];
    for (let at = 0; at < n; at++) {
      const turn = (2 * Math.PI * ((k * at) % n)) / n;
      real += (profile[at] as number) * Math.cos(turn);
      imaginary -= (profile[at] as number) * Math.sin(turn);
    }
    powers.push(real * real + imaginary * imaginary);
  }
  const all = sum(powers);
  const g = all > 0 ? Math.max(...powers) / all : 0;
  if (g === 0) return { fisherG: 0, chance: 1 };
  let [chance, choose] = [0, 1];
  for (let j = 1; j <= Math.floor(1 / g); j++) {
    choose *= (ordinates - j + 1) / j;
    const term = choose * Math.max(0, 1 - j * g) ** (ordinates - 1);
    chance += j % 2 === 1 ? term : -term;
    if (term < 1e-18) break;
  }
  return { fisherG: g, chance: Math.min(1, Math.max(0, chance)) };
}

/** The power of each frequency of real values, zeros added to `size`. */
function spectrum(values: readonly number[], size: number): Float64Array {
  const fft = new FFT(size);
  const padded = new Array<number>(size).fill(0);
  values.forEach((each, index) => {
    padded[index] = each;
  });
  const out = fft.createComplexArray();
  fft.realTransform(out, padded);
  const power = new Float64Array(size / 2 + 1);
  for (let bin = 0; bin <= size / 2; bin++)
    power[bin] = (out[2 * bin] as number) ** 2 + (out[2 * bin + 1] as number) ** 2;
  return power;
}

/**
 * How even marks at known places are for a period: the length of the mean of their turns on a circle of that period.
 *
 * @returns 1 all in step, near 0 none
 * @source Rayleigh’s test, as in Zar, Biostatistical Analysis (from memory)
 */
export function stepAgreement(placesMm: readonly number[], periodMm: number): number {
  let [x, y] = [0, 0];
  for (const place of placesMm) {
    x += Math.cos((2 * Math.PI * place) / periodMm);
    y += Math.sin((2 * Math.PI * place) / periodMm);
  }
  return Math.hypot(x, y) / Math.max(1, placesMm.length);
}
