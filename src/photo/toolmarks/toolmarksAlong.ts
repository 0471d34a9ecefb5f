import { mean } from '../../ground/statistics.ts';
import { withoutSlow } from './toolmarksCross.ts';
import type { MarksPlane } from './toolmarksPlane.ts';

/** Marks that run along the board, as numbers. */
export type AlongMarks = {
  /** Lean of what runs along: mm across for each mm along. */
  lean: number;
  /** Natural logarithm of the variance of broad tracks across the board. */
  tracks: number;
  /** How one-sided the steps between tracks are: hollows meet in ridges. */
  ridges: number;
  /** Natural logarithm of the variance of fine lines along, of those that last 2 mm. */
  fineContrast: number;
  /** How much of them lasts 15 mm: checks are short, streaks of the wood long. */
  fineLength: number;
  /** Natural logarithm of how peaked fine lines are: few and strong, or many and weak. */
  finePeaked: number;
  /** How evenly fine lines lie across, 0–1: checks of slicing do, pores do not. */
  fineSpacing: number;
};

/**
 * Measures what runs along a board: the tracks of a hand plane, and the checks of slicing.
 *
 * Method: columns are shifted by the lean that leaves the most variance when they are averaged along the board, ±0.07. Of that average
 * what is broader than 5 mm is the tracks; its steps over 1.5 mm are ridges, and their third moment tells whether they have one sign. Fine lines
 * are what departs from the mean over 1.2 mm across; how alike they are 2 and 15 mm on tells how long they last, how alike 0.6 to 2 mm across how evenly they lie.
 *
 * @source ours
 */
export function alongMarks(plane: MarksPlane): AlongMarks {
  const leans = Array.from({ length: 29 }, (_, index) => (index - 14) / 200);
  const averages = leans.map((lean) => acrossProfile(plane, lean));
  const variances = averages.map((row) => variance(withoutSlow(row, Math.round(3 / plane.stepMm))));
  const best = variances.indexOf(Math.max(...variances));
  const lean = leans[best] as number;
  const profile = averages[best] as Float64Array;
  const broad = smooth(profile, Math.max(1, Math.round(2.5 / plane.stepMm)));
  const step = Math.max(1, Math.round(1.5 / plane.stepMm));
  const steps = broad.slice(step).map((each, at) => each - (broad[at] as number));
  return {
    lean,
    tracks: Math.log(variance(broad) + 1e-7),
    ridges: Math.abs(skew(steps)),
    ...fineLines(plane, lean),
  };
}

function acrossProfile({ along, across, stepMm: _step, values }: MarksPlane, lean: number): Float64Array {
  const profile = new Float64Array(across);
  const counts = new Float64Array(across);
  for (let x = 0; x < along; x++) {
    const shift = Math.round(lean * (x - along / 2));
    for (let y = Math.max(0, -shift); y < Math.min(across, across - shift); y++) {
      profile[y] = (profile[y] as number) + (values[(y + shift) * along + x] as number);
      counts[y] = (counts[y] as number) + 1;
    }
  }
  return profile.map((each, y) => each / Math.max(1, counts[y] as number));
}

function fineLines({ along, across, stepMm, values }: MarksPlane, lean: number) {
  const reach = Math.max(1, Math.round(1.2 / stepMm));
  const fine = new Float32Array(values.length);
  for (let x = 0; x < along; x++) {
    const column = new Float64Array(across);
    for (let y = 0; y < across; y++) column[y] = values[y * along + x] as number;
    const lines = withoutSlow(column, reach);
    for (let y = 0; y < across; y++) fine[y * along + x] = lines[y] as number;
  }
  const alike = (lagMm: number) => {
    const lag = Math.round(lagMm / stepMm);
    const down = Math.round(lean * lag);
    let [sum, count] = [0, 0];
    for (let y = Math.max(0, -down); y < Math.min(across, across - down); y++)
      for (let x = 0; x + lag < along; x++) {
        sum += (fine[y * along + x] as number) * (fine[(y + down) * along + x + lag] as number);
        count++;
      }
    return sum / Math.max(1, count);
  };
  const [short, long] = [Math.max(alike(2), 1e-7), Math.max(alike(15), 0)];
  return {
    fineContrast: Math.log(short),
    fineLength: Math.min(1, long / short),
    finePeaked: peaked(fine, along, stepMm),
    fineSpacing: spacing(fine, along, across, stepMm),
  };
}

/** Kurtosis of fine lines averaged over 1.5 mm along, as a logarithm. */
function peaked(fine: Float32Array, along: number, stepMm: number): number {
  const reach = Math.max(1, Math.round(1.5 / stepMm));
  let [second, fourth, count] = [0, 0, 0];
  for (let at = 0; at + reach < fine.length; at += reach) {
    if ((at % along) + reach > along) continue;
    let sum = 0;
    for (let by = 0; by < reach; by++) sum += fine[at + by] as number;
    const square = (sum / reach) ** 2;
    second += square;
    fourth += square * square;
    count++;
  }
  return second > 0 ? Math.log((fourth * count) / second ** 2) : Math.log(3);
}

/** The highest likeness of fine lines 0.6 to 2 mm across, over the least likeness nearer by. */
function spacing(fine: Float32Array, along: number, across: number, stepMm: number): number {
  const alike = (lag: number) => {
    let sum = 0;
    for (let at = 0; at < (across - lag) * along; at++)
      sum += (fine[at] as number) * (fine[at + lag * along] as number);
    return sum / Math.max(1, (across - lag) * along);
  };
  const likeness = Array.from({ length: Math.floor(2 / stepMm) + 1 }, (_, lag) => alike(lag));
  const whole = Math.max(likeness[0] ?? 0, 1e-9);
  let [least, most] = [0, 0];
  likeness.forEach((each, lag) => {
    if (lag * stepMm >= 0.25) least = Math.min(least, each / whole);
    if (lag * stepMm >= 0.6) most = Math.max(most, each / whole - least);
  });
  return most;
}

function smooth(row: Float64Array, reach: number): Float64Array {
  const slow = withoutSlow(row, reach);
  return row.map((each, at) => each - (slow[at] as number));
}

function variance(row: Float64Array): number {
  const average = mean(row);
  return row.reduce((sum, each) => sum + (each - average) ** 2, 0) / row.length;
}

function skew(row: Float64Array): number {
  const average = mean(row);
  const spread = variance(row);
  if (!(spread > 0)) return 0;
  return row.reduce((sum, each) => sum + (each - average) ** 3, 0) / row.length / spread ** 1.5;
}
