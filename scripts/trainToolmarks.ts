/**
 * Learns from drawn surfaces what tells tool marks apart, and writes src/photo/toolmarks/toolmarksTrained.json:
 *
 *   npx tsx scripts/trainToolmarks.ts [MEASURED]
 *
 * MEASURED is a JSON file of { train, calibrate }, each a list of { kind, features }, to save measuring anew: it is read where it is there, and
 * written where it is not. Seeds 10001 to 10120 train, 20001 to 20040 set the temperature; the proof in toolmarks.test.ts uses others.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { mean as meanOf } from '../src/ground/statistics.ts';
import { cloudOf, farFromClouds } from '../src/photo/toolmarks/toolmarksClouds.ts';
import {
  markShares,
  markTerms,
  scaledFeatures,
  type TrainedMarks,
} from '../src/photo/toolmarks/toolmarksKinds.ts';
import { drawnKinds, drawnMeasures } from './toolmarkFeatures.ts';

type Rule = Omit<TrainedMarks, 'clouds' | 'farthest'>;
type Row = { kind: string; features: number[] };

const file = process.argv[2];
const measured = measure();
const rule = learn(measured.train);
rule.temperature = bestTemperature(rule, measured.calibrate);
const trained: TrainedMarks = { ...rule, ...cloudsOf(rule, measured.train) };
const out = fileURLToPath(new URL('../src/photo/toolmarks/toolmarksTrained.json', import.meta.url));
writeFileSync(
  out,
  `${JSON.stringify(trained, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(5)) : value))}\n`,
);
console.log(`temperature ${trained.temperature.toFixed(2)}`);
for (const [name, rows] of Object.entries(measured))
  console.log(
    `${name}: ${rows.length} surfaces, right ${rightShare(trained, rows).toFixed(3)}, loss ${loss(trained, rows).toFixed(3)}`,
  );

function measure(): { train: Row[]; calibrate: Row[] } {
  if (file !== undefined && existsSync(file)) return JSON.parse(readFileSync(file, 'utf8'));
  const rows = (from: number, count: number) =>
    drawnKinds.flatMap((kind) =>
      drawnMeasures(
        kind,
        Array.from({ length: count }, (_, index) => from + index),
      ).map(({ measures }) => ({
        kind,
        features: measures.features,
      })),
    );
  const fresh = { train: rows(10001, 120), calibrate: rows(20001, 40) };
  if (file !== undefined) writeFileSync(file, JSON.stringify(fresh));
  return fresh;
}

/** Gradient descent with momentum on the mean log loss, weights held small. */
function learn(rows: readonly Row[]): Rule {
  const count = rows[0]?.features.length ?? 0;
  const column = (index: number) => rows.map(({ features }) => features[index] as number);
  const mean = Array.from({ length: count }, (_, index) => meanOf(column(index)));
  const sd = mean.map((middle, index) =>
    Math.max(1e-3, Math.sqrt(meanOf(column(index).map((each) => (each - middle) ** 2)))),
  );
  const terms = rows.map(({ features }) => markTerms(features, { mean, sd }));
  const wanted = rows.map(({ kind }) => drawnKinds.indexOf(kind as (typeof drawnKinds)[number]));
  const weights = drawnKinds.map(() => new Array<number>(1 + 2 * count).fill(0));
  const speed = drawnKinds.map(() => new Array<number>(1 + 2 * count).fill(0));
  const trained = { mean, sd, weights, temperature: 1 };
  for (let round = 0; round < 1500; round++) {
    const slope = drawnKinds.map(() => new Array<number>(1 + 2 * count).fill(0));
    rows.forEach((row, at) => {
      const shares = markShares(row.features, trained);
      shares.forEach((share, kind) => {
        const off = share - (wanted[at] === kind ? 1 : 0);
        (terms[at] as number[]).forEach((term, index) => {
          (slope[kind] as number[])[index] =
            ((slope[kind] as number[])[index] as number) + (off * term) / rows.length;
        });
      });
    });
    weights.forEach((row, kind) => {
      row.forEach((weight, index) => {
        const held = index === 0 ? 0 : 0.003 * weight;
        const push =
          0.9 * ((speed[kind] as number[])[index] as number) -
          0.25 * (((slope[kind] as number[])[index] as number) + held);
        (speed[kind] as number[])[index] = push;
        row[index] = weight + push;
      });
    });
  }
  return trained;
}

/** Each kind’s cloud, and the distance from the nearest that 99.5 in 100 of the surfaces keep within. */
function cloudsOf(rule: Rule, rows: readonly Row[]): Pick<TrainedMarks, 'clouds' | 'farthest'> {
  const scaled = rows.map(({ features }) => scaledFeatures(features, rule));
  const clouds = drawnKinds.map((kind) => cloudOf(scaled.filter((_, at) => rows[at]?.kind === kind)));
  const far = scaled.map((each) => farFromClouds(each, clouds)).sort((a, b) => a - b);
  return { clouds, farthest: far[Math.floor(0.995 * far.length)] as number };
}

function bestTemperature(trained: Rule, rows: readonly Row[]): number {
  const tried = Array.from({ length: 60 }, (_, index) => 0.5 * 1.04 ** index);
  return tried.reduce((best, temperature) =>
    loss({ ...trained, temperature }, rows) < loss({ ...trained, temperature: best }, rows)
      ? temperature
      : best,
  );
}

function loss(trained: Rule, rows: readonly Row[]): number {
  return meanOf(
    rows.map(
      ({ kind, features }) =>
        -Math.log(
          markShares(features, trained)[drawnKinds.indexOf(kind as (typeof drawnKinds)[number])] as number,
        ),
    ),
  );
}

function rightShare(trained: Rule, rows: readonly Row[]): number {
  return meanOf(
    rows.map(({ kind, features }) => {
      const shares = markShares(features, trained);
      return drawnKinds[shares.indexOf(Math.max(...shares))] === kind ? 1 : 0;
    }),
  );
}
