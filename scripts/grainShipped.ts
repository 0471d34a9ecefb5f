/**
 * Writes src/photo/grain/grainShipped.json, what photo.grain-match knows of pairs of one and of two pieces:
 *
 *   npx tsx scripts/grainShipped.ts [pairs of each kind] && npx biome check --write src/photo/grain/grainShipped.json
 *
 * Everything is rendered from fixed seeds that the proof (scripts/grainProof.ts) does not use.
 */
import { writeFileSync } from 'node:fs';
import { featureNames } from '../src/photo/grain/grainFeatures.ts';
import { grainKinds } from '../test/kits/surfaces/grainPairs.ts';
import { type Draw, drawPairs } from './grain/draws.ts';
import { fitLogistic } from './grain/logistic.ts';

const firstSeed = 1_000_000;
const pairsEach = Number(process.argv[2] ?? 160);
// Under paint there is nothing to learn but how paint looks; an examiner who marks a surface as painted gets no ratio.
const kinds = grainKinds.filter((kind) => kind !== 'painted');

const draws = kinds.flatMap((kind) => [
  ...drawPairs(kind, pairsEach / 2, firstSeed),
  ...drawPairs(kind, pairsEach / 2, firstSeed + 200_000, 0.6),
]);
const told = draws.filter(({ silence }) => silence === undefined);
const fitted = fitLogistic(
  told.map(({ features }) => features),
  told.map(({ onePiece }) => onePiece),
);
const [one, two] = [true, false].map((side) => told.filter(({ onePiece }) => onePiece === side)) as [
  Draw[],
  Draw[],
];
const score = ({ features }: Draw) =>
  features.reduce((sum, each, at) => sum + each * (fitted.weights[at] as number), 0);
const drift = one.map(({ match }) => Math.abs(match.shiftPx) / match.leverPx).sort((a, b) => a - b);

const shipped = {
  madeBy: 'scripts/grainShipped.ts',
  firstSeed,
  kinds,
  pairsOfOne: one.length,
  pairsOfTwo: two.length,
  silent: draws.length - told.length,
  /** Beyond these the pairs no longer vouch for a ratio. */
  lowest: rounded(1 / surest(two.map(score), one.map(score), -1)),
  highest: rounded(surest(one.map(score), two.map(score), 1)),
  features: featureNames,
  weights: fitted.weights.map(rounded),
  covariance: fitted.covariance.map((row) => row.map(rounded)),
  /** Two thirds of the pairs of one piece had drifted aside by no more than this share of the distance between the strips' middles. */
  driftShare: rounded(drift[Math.floor(0.683 * drift.length)] as number),
  correlations: {
    one: quantiles(one.map(({ match }) => match.correlation)),
    two: quantiles(two.map(({ match }) => match.correlation)),
  },
  logRatios: { one: quantiles(one.map(score)), two: quantiles(two.map(score)) },
};

writeFileSync(
  new URL('../src/photo/grain/grainShipped.json', import.meta.url),
  `${JSON.stringify(shipped, null, 2)}\n`,
);
console.log(
  `${one.length} pairs of one piece, ${two.length} of two, ${shipped.silent} that say nothing; weights ${shipped.weights.join(' ')}`,
);

/**
 * The largest ratio that counting can vouch for: over every limit, the share of one side beyond it against the most that the other side's
 * may truly be, at 95 %: three in n where none is (the rule of three), and as much more as chance allows where some are.
 */
function surest(these: readonly number[], others: readonly number[], sense: 1 | -1): number {
  const ratios = these.map((limit) => {
    const share = these.filter((each) => sense * each >= sense * limit).length / these.length;
    const beyond = others.filter((each) => sense * each >= sense * limit).length;
    return share / ((beyond + 3 + 1.65 * Math.sqrt(beyond)) / others.length);
  });
  return Math.max(...ratios);
}

/** From the least to the greatest in steps of one in forty. */
function quantiles(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return Array.from({ length: 41 }, (_, at) =>
    rounded(sorted[Math.round((at / 40) * (sorted.length - 1))] as number),
  );
}

function rounded(value: number): number {
  return Number(value.toPrecision(5));
}
