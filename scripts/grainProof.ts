/**
 * Tries photo.grain-match and photo.grain on rendered boards of known truth and prints the tables of docs/grain.md:
 *
 *   npx tsx scripts/grainProof.ts [pairs of each kind] [kind …]
 *
 * Seeds differ from those the shipped ratios were learnt on (scripts/grainShipped.ts).
 */
import sharp from 'sharp';
import { logRatioCost } from '../src/calibration/scoring.ts';
import { grainDirection } from '../src/photo/grain/grain.ts';
import { grainOdds } from '../src/photo/grain/grainOdds.ts';
import type { Picture } from '../src/photo/picture.ts';
import { type GrainKind, grainKinds, grainPair } from '../test/kits/surfaces/grainPairs.ts';
import { type Draw, drawPairs, drawPairsThrough } from './grain/draws.ts';
import { areaUnderCurve, rocAt } from './grain/score.ts';

const firstSeed = 5_000_000;
const pairsEach = Number(process.argv[2] ?? 100);
const kinds = process.argv.length > 3 ? (process.argv.slice(3) as GrainKind[]) : grainKinds;

type Tried = { draw: Draw; logRatio: number; odds: ReturnType<typeof grainOdds> };

const tried = kinds.flatMap((kind) => drawPairs(kind, pairsEach, firstSeed).map(weighed));

console.log(`${pairsEach} pairs of each kind, half of one piece; seeds from ${firstSeed}\n`);
console.log(
  '| kind | pairs | cannot tell | AUC, told | AUC, all | Cllr, told | Cllr, all | misleading | strongly misleading |',
);
console.log('| --- | --- | --- | --- | --- | --- | --- | --- | --- |');
for (const kind of kinds) console.log(row(kind, ofKind(kind)));
console.log(
  row(
    'all but painted',
    tried.filter(({ draw }) => draw.kind !== 'painted'),
  ),
);
for (const kind of ['straight', 'plain', 'painted'] as const) {
  if (!kinds.includes(kind)) continue;
  const again = await drawPairsThrough(kind, pairsEach, firstSeed, asJpeg);
  console.log(row(`${kind}, as JPEG of quality 70`, again.map(weighed)));
}

console.log('\n| kind | one piece told when 1 in 100, 1 in 20, 1 in 10 of two pass |\n| --- | --- |');
for (const kind of kinds) {
  const { one, two } = sides(ofKind(kind).filter(({ draw }) => draw.silence === undefined));
  if (Math.min(one.length, two.length) >= 10)
    console.log(
      `| ${kind} | ${rocAt(one, two, [0.01, 0.05, 0.1])
        .map((each) => each.toFixed(2))
        .join(', ')} |`,
    );
}

console.log(
  '\n| ratio | pairs of one piece | pairs of two | their ratio, each side counted alike |\n| --- | --- | --- | --- |',
);
const told = tried.filter(({ draw }) => draw.silence === undefined && draw.kind !== 'painted');
const ones = told.filter(({ draw }) => draw.onePiece).length;
const edges = [0, 0.02, 0.1, 0.316, 1, 3.16, 10, 50, Number.POSITIVE_INFINITY];
for (let at = 0; at + 1 < edges.length; at++) {
  const [low, high] = [edges[at] as number, edges[at + 1] as number];
  const within = told.filter(({ odds }) => odds.likelihoodRatio >= low && odds.likelihoodRatio < high);
  const one = within.filter(({ draw }) => draw.onePiece).length;
  const seen = one / ones / ((within.length - one) / (told.length - ones));
  console.log(
    `| ${low}–${high} | ${one} | ${within.length - one} | ${Number.isFinite(seen) ? seen.toPrecision(2) : '–'} |`,
  );
}

const shifts = told
  .filter(({ draw, logRatio }) => draw.onePiece && logRatio > 0)
  .map(({ draw, odds }) => draw.match.shiftPx / odds.shiftSigmaPx);
console.log(
  `\nShift of one piece over its uncertainty: within 1 in ${share(shifts, 1)}, within 2 in ${share(shifts, 2)} of ${shifts.length}.`,
);
const silent = tried
  .filter(({ draw }) => draw.silence !== undefined)
  .map(({ draw }) => `${draw.kind}: ${draw.silence}`);
console.log(
  `Silent: ${[...new Set(silent)].map((each) => `${each} ${silent.filter((other) => other === each).length}`).join('; ')}.`,
);
directions();

function weighed(draw: Draw): Tried {
  const odds = grainOdds(draw.match, draw.silence);
  return { draw, odds, logRatio: Math.log(odds.likelihoodRatio) };
}

async function asJpeg({ widthPx, heightPx, pixels }: Picture): Promise<Picture> {
  const file = await sharp(pixels, { raw: { width: widthPx, height: heightPx, channels: 3 } })
    .jpeg({ quality: 70 })
    .toBuffer();
  const { data } = await sharp(file).raw().toBuffer({ resolveWithObject: true });
  return { widthPx, heightPx, channels: 3, pixels: data };
}

function ofKind(kind: GrainKind): Tried[] {
  return tried.filter(({ draw }) => draw.kind === kind);
}

function sides(of: readonly Tried[]) {
  const side = (onePiece: boolean) =>
    of.filter(({ draw }) => draw.onePiece === onePiece).map(({ logRatio }) => logRatio);
  return { one: side(true), two: side(false) };
}

function row(name: string, all: readonly Tried[]): string {
  const talking = all.filter(({ draw }) => draw.silence === undefined);
  const [every, some] = [sides(all), sides(talking)];
  const enough = Math.min(some.one.length, some.two.length) >= 10;
  const wrong = (by: number) =>
    talking.filter(({ draw, logRatio }) => (draw.onePiece ? -logRatio : logRatio) > Math.log(by)).length;
  const cells = [
    all.length,
    `${Math.round(100 * (1 - talking.length / all.length))} %`,
    enough ? areaUnderCurve(some.one, some.two).toFixed(3) : '–',
    areaUnderCurve(every.one, every.two).toFixed(3),
    enough ? (logRatioCost(some.one, some.two) ?? 0).toFixed(3) : '–',
    (logRatioCost(every.one, every.two) ?? 0).toFixed(3),
    `${wrong(1)} of ${talking.length}`,
    `${wrong(10)} of ${talking.length}`,
  ];
  return `| ${name} | ${cells.join(' | ')} |`;
}

function share(values: readonly number[], within: number): string {
  return (values.filter((each) => Math.abs(each) <= within).length / values.length).toFixed(2);
}

/** How near the measured direction comes to the true one: the pith’s line as turned by the camera, which straight grain follows. */
function directions(): void {
  const found = Array.from({ length: Math.min(60, pairsEach) }, (_, index) => {
    const pair = grainPair('straight', true, firstSeed + 97 * index);
    const grain = grainDirection(pair.rendered.picture, pair.rendered.a);
    const apart = grain.orientationDeg - pair.trueGrainDeg;
    return { apart: apart - 180 * Math.round(apart / 180), grain };
  });
  const tells = found.filter(({ grain }) => grain.says === 'runs');
  const rms = Math.sqrt(tells.reduce((sum, { apart }) => sum + apart * apart, 0) / tells.length);
  console.log(
    `Direction on straight grain: ${tells.length} of ${found.length} told, ${rms.toFixed(2)}° off in the mean square.`,
  );
  for (const kind of kinds) {
    const grains = Array.from({ length: 20 }, (_, index) => {
      const { rendered } = grainPair(kind, true, firstSeed + 97 * index);
      return grainDirection(rendered.picture, rendered.a);
    });
    const coherences = grains.map(({ coherence }) => coherence).sort((a, b) => a - b);
    console.log(
      `photo.grain, ${kind}: cannot tell ${grains.filter(({ says }) => says !== 'runs').length} of 20; coherence ${coherences[2]?.toFixed(2)} – ${coherences[17]?.toFixed(2)}`,
    );
  }
}
