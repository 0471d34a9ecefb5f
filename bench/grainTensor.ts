/**
 * How fast the structure tensor is, beside a general vision library in the same run, and whether both say the same.
 *
 *   npx tsx bench/grainTensor.ts
 *
 * Both get the same lightness and the same seven taps; compared are the tensors of all inner squares. Stripes with a seed; medians of
 * five runs; what was measured once stands in docs/bench.md.
 */
import { createRequire } from 'node:module';
import { cpus } from 'node:os';
import { grainDirection } from '../src/photo/grain/grain.ts';
import type { Plane } from '../src/photo/grain/grainPlane.ts';
import { gradientTaps, structureTensor, type TensorGrid } from '../src/photo/grain/grainTensor.ts';
import type { Picture } from '../src/photo/picture.ts';
import { smoothNoise } from '../test/kits/surfaces/smoothNoise.ts';

const cellPx = 100;
const sizes = [
  { name: '2 megapixels', widthPx: 1600, heightPx: 1200 },
  { name: '12 megapixels', widthPx: 4000, heightPx: 3000 },
  { name: '24 megapixels', widthPx: 6000, heightPx: 4000 },
];

// biome-ignore lint/suspicious/noExplicitAny: the library's own types leave out half of what it has.
const cv: any = (await loadVision()).cv;

console.log(
  `Node ${process.version}, ${cpus().length} cores (${cpus()[0]?.model ?? ''}); medians of 5 in ms\n`,
);
console.log(
  '| picture | tensor, ours | tensor, opencv-js | squares compared | furthest apart | direction apart | photo.grain whole |',
);
console.log('| --- | --- | --- | --- | --- | --- | --- |');
for (const size of sizes) console.log(row(size));

function row({ name, widthPx, heightPx }: (typeof sizes)[number]): string {
  const picture = stripes(widthPx, heightPx);
  const plane: Plane = { widthPx, heightPx, values: Float32Array.from(picture.pixels) };
  const source = cv.matFromArray(1, 1, cv.CV_32F, [0]);
  source.delete();
  const mat = new cv.Mat(heightPx, widthPx, cv.CV_32F);
  mat.data32F.set(plane.values);
  const ours = median(() => structureTensor(plane, cellPx, true));
  const theirs = median(() => peerTensor(mat, widthPx / cellPx, heightPx / cellPx));
  mat.delete();
  const whole = median(() => grainDirection(picture, { x: 0, y: 0, widthPx, heightPx }));
  const { furthest, direction, compared } = apart(ours.answer, theirs.answer);
  const times = [ours.ms, theirs.ms].map((each) => each.toFixed(0));
  return `| ${name} | ${times.join(' | ')} | ${compared} | ${furthest.toExponential(0)} | ${direction.toExponential(0)}° | ${whole.ms.toFixed(0)} |`;
}

/** Means of the products of the gradients over squares, by the peer: separable filters, products, area averages. */
function peerTensor(mat: unknown, columns: number, rows: number): Float32Array[] {
  const { smooth, derive } = gradientTaps;
  const kernels = [smooth, derive].map((taps) => cv.matFromArray(1, taps.length, cv.CV_32F, taps));
  const [gx, gy, product, small] = [new cv.Mat(), new cv.Mat(), new cv.Mat(), new cv.Mat()];
  try {
    cv.sepFilter2D(mat, gx, cv.CV_32F, kernels[1], kernels[0]);
    cv.sepFilter2D(mat, gy, cv.CV_32F, kernels[0], kernels[1]);
    return [
      [gx, gx],
      [gx, gy],
      [gy, gy],
    ].map(([a, b]) => {
      cv.multiply(a, b, product);
      cv.resize(product, small, new cv.Size(columns, rows), 0, 0, cv.INTER_AREA);
      return Float32Array.from(small.data32F);
    });
  } finally {
    for (const each of [...kernels, gx, gy, product, small]) each.delete();
  }
}

/** The largest difference of any inner square's tensor, as a share of its energy, and of the whole direction. */
function apart(ours: TensorGrid, theirs: readonly Float32Array[]) {
  const [xx, xy, yy] = theirs as [Float32Array, Float32Array, Float32Array];
  let [furthest, compared] = [0, 0];
  const sums = { ours: [0, 0, 0], theirs: [0, 0, 0] };
  for (let index = 0; index < ours.cells.length; index++) {
    const [column, line] = [index % ours.columns, Math.floor(index / ours.columns)];
    if (column === 0 || line === 0 || column === ours.columns - 1 || line === ours.rows - 1) continue;
    const cell = ours.cells[index] as TensorGrid['cells'][number];
    const own = [cell.xx, cell.xy, cell.yy].map((each) => each / cell.pixels);
    const other = [xx[index], xy[index], yy[index]] as number[];
    const energy = (own[0] as number) + (own[2] as number);
    own.forEach((each, at) => {
      furthest = Math.max(furthest, Math.abs(each - (other[at] as number)) / energy);
      sums.ours[at] = (sums.ours[at] as number) + each;
      sums.theirs[at] = (sums.theirs[at] as number) + (other[at] as number);
    });
    compared++;
  }
  const direction = ([a, b, c]: number[]) =>
    (Math.atan2(2 * (b as number), (a as number) - (c as number)) * 90) / Math.PI;
  return { furthest, compared, direction: Math.abs(direction(sums.ours) - direction(sums.theirs)) };
}

function stripes(widthPx: number, heightPx: number): Picture {
  const [cos, sin] = [Math.cos(0.3), Math.sin(0.3)];
  const table = Float32Array.from(
    { length: 4096 },
    (_, at) => 120 + 40 * smoothNoise(3, at / 6, 0.5) + 15 * smoothNoise(4, at / 2, 0.5),
  );
  const pixels = Uint8Array.from({ length: widthPx * heightPx }, (_, at) => {
    const [x, y] = [at % widthPx, Math.floor(at / widthPx)];
    return (table[Math.floor(Math.abs(x * cos + y * sin)) % 4096] as number) + ((at * 2654435761) >>> 29);
  });
  return { widthPx, heightPx, channels: 1, pixels };
}

function median<Answer>(act: () => Answer): { ms: number; answer: Answer } {
  let answer = act();
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    answer = act();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { ms: times[2] as number, answer };
}

/** Wrapped, since the library has a `then` of its own that never comes to an end under `await`. */
function loadVision(): Promise<{ cv: unknown }> {
  const cv = createRequire(import.meta.url)('@techstark/opencv-js');
  return new Promise((resolve) => {
    if (cv.Mat) resolve({ cv });
    else cv.onRuntimeInitialized = () => resolve({ cv });
  });
}
