import type { ReadingWeights } from '../evidence/readingWeights.ts';
import { type Making, makings, worlds } from '../evidence/worlds.ts';
import { copyOf, type Factor } from './factor.ts';
import type { Layout } from './layout.ts';
import type { Sums } from './readingPosterior.ts';

/** The reading that a later making gives. */
const readingOfMaking = {
  'bench-copy': 'later-bench-copy',
  'machine-copy': 'later-machine-copy',
  'to-deceive': 'made-to-deceive',
} as const;

/**
 * A whole product with what was seen of the piece as a whole put in, where that speaks of the reading alone.
 *
 * The stricter sums stand one within the other, so a reading is the difference of two: each difference is weighted, and the
 * sums are put together again. Linear, so it may be done before or after any other summing.
 */
export function toldFactor(layout: Layout, whole: Factor, weights: ReadingWeights | undefined): Factor {
  if (weights === undefined) return whole;
  const { cutsetStates, scenarios, cells, cellCount, periodCellCount, periodScenarios } = layout;
  const sums = whole.sums.map(copyOf);
  const [all, ...strict] = sums as [Float64Array, Float64Array, Float64Array, Float64Array];
  const steps = periodSteps(weights);
  for (let m = 0; m < cutsetStates.length; m++) {
    for (let c = 0; c < scenarios.length; c++) {
      const { offset, count } = cells[c] as { offset: number; count: number };
      const at = m * cellCount + offset;
      if (c >= periodScenarios) {
        const by = weights[readingOfMaking[laterMaking(scenarios[c]?.world ?? 0)]];
        for (let i = at; i < at + count; i++) all[i] = (all[i] as number) * by;
        continue;
      }
      const from = m * periodCellCount + offset;
      for (let i = 0; i < count; i++) {
        const nested = [all[at + i], ...strict.map((sum) => sum[from + i])] as [
          number,
          number,
          number,
          number,
        ];
        const told = toldNested(nested, steps);
        all[at + i] = told[0];
        strict.forEach((sum, k) => {
          sum[from + i] = told[k + 1] as number;
        });
      }
    }
  }
  return { sums, log: whole.log };
}

/** The same for sums over makings and levels. */
export function toldSums({ byMaking, strict, log }: Sums, weights: ReadingWeights | undefined): Sums {
  if (weights === undefined) return { byMaking, strict, log };
  const [period, notMadeUp, notAltered, intact] = toldNested(
    [byMaking.period, ...strict],
    periodSteps(weights),
  );
  return {
    byMaking: {
      period,
      'bench-copy': byMaking['bench-copy'] * weights['later-bench-copy'],
      'machine-copy': byMaking['machine-copy'] * weights['later-machine-copy'],
      'to-deceive': byMaking['to-deceive'] * weights['made-to-deceive'],
    },
    strict: [notMadeUp, notAltered, intact],
    log,
  };
}

/**
 * By what each of the seven sums (the four makings, then period work at the three stricter levels) counts in the sum over
 * all readings: so a line kept by outcome gives its total.
 */
export function outcomeWeights(weights: ReadingWeights | undefined): readonly number[] {
  if (weights === undefined) return [1, 1, 1, 1, 0, 0, 0];
  const [madeUp, altered, repaired, intact] = periodSteps(weights);
  return [
    ...makings.map((making) => (making === 'period' ? madeUp : weights[readingOfMaking[making]])),
    altered - madeUp,
    repaired - altered,
    intact - repaired,
  ];
}

/** Made up, altered, repaired, intact: the readings of period work from the widest sum to the strictest. */
function periodSteps(weights: ReadingWeights): [number, number, number, number] {
  return [
    weights['made-up'],
    weights['period-altered'],
    weights['period-repaired'],
    weights['period-intact'],
  ];
}

function toldNested(
  [all, notMadeUp, notAltered, intact]: readonly [number, number, number, number],
  [madeUp, altered, repaired, whole]: readonly [number, number, number, number],
): [number, number, number, number] {
  const strictest = whole * intact;
  const second = strictest + repaired * (notAltered - intact);
  const first = second + altered * (notMadeUp - notAltered);
  return [first + madeUp * (all - notMadeUp), first, second, strictest];
}

function laterMaking(world: number): Exclude<Making, 'period'> {
  const making = worlds[world]?.making ?? 'to-deceive';
  return making === 'period' ? 'to-deceive' : making;
}
